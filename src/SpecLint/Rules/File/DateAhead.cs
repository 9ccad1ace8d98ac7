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
                One(context, lot.Made, $"lots[{name}].made", "the lot was made", stock.On);
                One(context, lot.Opened, $"lots[{name}].opened", "the lot was opened", stock.On);
                if (lot.Measured is { } read) One(context, read.On, $"lots[{name}].measured.on", "the lot was measured", stock.On);
            }
        }
        else if (context.File is Bar bar)
        {
            foreach (var meter in bar.Meters)
                One(context, meter.Value.Calibrated, $"tools.meters[{meter.Key}].calibrated", "the meter was calibrated");
        }
    }

    /// <param name="context">The file.</param>
    /// <param name="date">The day on which something was done.</param>
    /// <param name="path">Its property.</param>
    /// <param name="what">What was done.</param>
    /// <param name="counted">The day on which the file says what there was, where it says one.</param>
    private static void One(FileContext context, Given<CalendarDate> date, string path, string what, Given<CalendarDate> counted = default)
    {
        if (!date.IsGiven) return;
        bool ahead = context.On < date.Value;
        if (!ahead && !(counted.IsGiven && counted.Value < date.Value)) return;
        var (day, named) = ahead ? (context.On, "run") : (counted.Value, "count");
        context.Report(new(Rule)
        {
            At = context.At(date.Span, path),
            Message = $"The day on which {what}, {date.Value}, is after the day of {(ahead ? "this" : "the")} {named}, {day}.",
            Advice = ahead
                ? "Correct the year or the month, or run with `--on` for a later day."
                : "Correct one of the two: what was not there yet was not counted.",
            Evidence = [Proof.Of($"day of the {named}", day.ToString())],
        });
    }
}
