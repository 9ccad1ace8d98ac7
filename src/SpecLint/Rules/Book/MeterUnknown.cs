using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9019", "meter-unknown", "A reading names a meter that the bar does not list", Level.Warning)]
internal sealed partial class MeterUnknown : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.Settings.Bar is not { Meters.Count: > 0 } bar) return;
        if (context.File is Recipe recipe) Check(context, bar, recipe.AsMeasured, "measured.meter", "");
        if (context.File is not Stock stock) return;
        foreach (var lot in stock.Lots) Check(context, bar, lot.Measured, $"lots[{lot.Item.Or("")}].measured.meter", $"{lot.Number}");
    }

    private static void Check(FileContext context, Bar bar, Measurement? measured, string path, string key)
    {
        if (measured is not { Meter.IsGiven: true } || bar.Meters.ContainsKey(measured.Meter.Value)) return;
        string[] meters = [.. bar.Meters.Keys.OrderBy(k => k, StringComparer.Ordinal)];
        string? near = NearestName.Of(measured.Meter.Value, meters);
        context.Report(new(Rule)
        {
            At = context.At(measured.Meter.Span, path),
            Key = key,
            Message = $"`{measured.Meter.Value}` is not one of the bar's meters, so its readings count as those of an uncalibrated meter.",
            Advice = near is null
                ? $"Name one of {Say.List(meters, "or")}, or list it under `tools.meters` in bar.json."
                : $"Write `{near}` if that is meant.",
            Evidence = [Proof.Of("meter", measured.Meter.Value, context.At(measured.Meter.Span))],
            Corrections = context.Write(measured.Meter.Span, near, $"Name `{near}`."),
        });
    }
}
