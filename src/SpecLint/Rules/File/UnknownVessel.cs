using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1031", "unknown-vessel", "A vessel that is neither in bar.json nor in the table", Level.Note)]
internal sealed partial class UnknownVessel : FileRule
{
    public override void Check(FileContext context)
    {
        if (context is RecipeContext recipe)
        {
            if (recipe.Recipe is Prep { Keep: { } keep }) Check(context, keep.In, "keep.in");
            foreach (var step in recipe.Recipe.Method)
            {
                if (step.Vessel is { IsGiven: true, Value.IsKnown: false }) Check(context, step.Vessel, recipe.PathOf(step) + ".vessel");
            }
        }
        else if (context.File is Stock stock)
        {
            foreach (var lot in stock.Lots) Check(context, lot.In, $"lots[{lot.Item.Or("")}].in");
        }
    }

    private static void Check(FileContext context, Given<Vessel> vessel, string path)
    {
        if (!vessel.IsGiven || vessel.Value.IsKnown) return;
        string written = vessel.Value.Id;
        var bar = context.Settings.Bar;
        if (GlassType.Of(written).IsKnown || (bar is not null && (bar.Vessels.ContainsKey(written) || bar.Glasses.ContainsKey(written))))
            return;
        string? near = NearestName.Of(written, bar is null ? VesselType.Words : bar.Vessels.Keys.Concat(VesselType.Words));
        context.Report(new(Rule)
        {
            At = context.At(vessel.Span, path),
            Message = $"`{written}` is neither a vessel in bar.json nor in the table, so nothing is known of its lid, its material or the "
                + "pressure it is made for.",
            Advice = near is null
                ? "Start with a word such as bottle, jar, tub, bag, jug, keg or siphon, or add the vessel to bar.json."
                : $"Write `{near}` if that is meant, or add the vessel to bar.json.",
            Corrections = context.Write(vessel.Span, near, $"Write `{near}`."),
        });
    }
}
