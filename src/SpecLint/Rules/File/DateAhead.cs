using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1020", "date-ahead", "The date of something already done is in the future", Level.Warning)]
internal sealed partial class DateAhead : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Recipe recipe)
        {
            One(context, recipe.Date, "date", "the recipe was written");
            if (recipe.AsMeasured is { } measured) One(context, measured.On, "measured.on", "it was measured");
        }
        else if (context.File is Stock stock)
        {
            foreach (var lot in stock.Lots)
            {
                string name = lot.Item.IsGiven ? lot.Item.Value : $"{lot.Number}";
                One(context, lot.Made, $"lots[{name}].made", "the lot was made");
                One(context, lot.Opened, $"lots[{name}].opened", "the lot was opened");
                if (lot.Measured is { } read) One(context, read.On, $"lots[{name}].measured.on", "the lot was measured");
            }
        }
        else if (context.File is Bar bar)
        {
            foreach (var meter in bar.Meters) One(context, meter.Value.Calibrated, $"tools.meters[{meter.Key}].calibrated", "the meter was calibrated");
        }
    }

    private static void One(FileContext context, Given<CalendarDate> date, string path, string what)
    {
        if (!date.IsGiven || !(context.On < date.Value)) return;
        context.Report(new(Rule)
        {
            At = context.At(date.Span, path),
            Message = $"The day on which {what}, {date.Value}, is after the day of this run, {context.On}.",
            Advice = "Correct the year or the month, or run with `--on` for a later day.",
            Evidence = [Proof.Of("day of the run", context.On.ToString())],
        });
    }
}
