using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>A number with a unit that no bar works with, whatever the style: held against the tables of plausible numbers.</summary>
internal abstract class PlausibilityRule : FileRule
{
    /// <summary>What the numbers of the rule measure.</summary>
    protected abstract Dimension Dimension { get; }

    /// <summary>Units in which the number may have been meant, with their base units, likeliest first.</summary>
    protected abstract (string Unit, double Factor, double Offset)[] Readings { get; }

    /// <summary>The unit of the base, in UCUM.</summary>
    protected abstract string BaseUnit { get; }

    /// <summary>A number in the base unit, in words.</summary>
    protected abstract string Words(double value);

    /// <summary>Holds one number against its range.</summary>
    /// <param name="context">The file.</param>
    /// <param name="given">The number.</param>
    /// <param name="range">What it can be; <see langword="null"/> says nothing.</param>
    /// <param name="path">Its path.</param>
    /// <param name="what">What it is, as the start of a sentence: <c>The step `boil` is at</c>.</param>
    protected void One(FileContext context, Given<Quantity> given, PlausibleRange? range, string path, string what)
    {
        if (IsOutside(given, range)) Report(context, given, range!, path, what);
    }

    /// <summary>Holds one number of a step against its range; path and words are made only where it lies outside.</summary>
    /// <param name="context">The recipe.</param>
    /// <param name="step">The step.</param>
    /// <param name="given">The number.</param>
    /// <param name="range">What it can be; <see langword="null"/> says nothing.</param>
    /// <param name="property">Its property of the step.</param>
    /// <param name="does">What the step does, in the sentence <c>The step `boil` is at</c>.</param>
    protected void One(RecipeContext context, Step step, Given<Quantity> given, PlausibleRange? range, string property, string does)
    {
        if (!IsOutside(given, range)) return;
        string verb = step.Do.IsGiven ? step.Written : "?";
        Report(context, given, range!, $"{context.PathOf(step)}.{property}", $"The step `{verb}` {does}");
    }

    private bool IsOutside(Given<Quantity> given, PlausibleRange? range) =>
        range is not null && given.IsGiven && given.Value.Dimension == Dimension
        && range.Excludes(given.Value.BaseLow, given.Value.BaseHigh);

    private void Report(FileContext context, Given<Quantity> given, PlausibleRange range, string path, string what)
    {
        var amount = given.Value;
        bool over = amount.BaseLow > range.High;
        double limit = over ? range.High : range.Low;
        string written = Written.Text(context, given.Span);
        var reading = Reading(amount, range);
        bool isRead = reading.Unit.Length > 0;
        string meant = isRead ? $" As {reading.Words} it would be {Words(reading.Base)}, which is usual." : "";
        context.Report(new(Info)
        {
            AskedLevel = range.MustNot && over && range.Mark != Mark.Memory ? Level.Error : null,
            At = context.At(given.Span, path),
            Message = $"{what} {written}, {(over ? "above" : "below")} the plausible {(over ? "maximum" : "minimum")} of {Words(limit)} "
                + $"({range.Condition}; {range.Source}).{meant}",
            Advice = isRead ? $"Write {reading.Words}, if that is meant. Otherwise check the number." : "Check the number and its unit.",
            Evidence =
            [
                Proof.Of("written", amount, context.At(given.Span)),
                Proof.Of(over ? "plausible most" : "plausible least", limit, BaseUnit, range.Source),
            ],
            Corrections = context.Write(given.Span, isRead ? reading.Words : null),
        });
    }

    /// <summary>The first reading in another unit that lies in the range; an empty unit where none does.</summary>
    private (string Unit, string Words, double Base) Reading(Quantity amount, PlausibleRange range)
    {
        foreach (var (unit, factor, offset) in Readings)
        {
            if (unit == amount.Unit.Name) continue;
            double low = (amount.Low * factor) + offset, high = (amount.High * factor) + offset;
            if (!range.Holds(low) || !range.Holds(high)) continue;
            string number = amount.Low < amount.High
                ? Say.Between(Say.Number(amount.Low), Say.Number(amount.High))
                : Say.Number(amount.Value);
            return (unit, $"{number} {unit}", (amount.Value * factor) + offset);
        }

        return ("", "", double.NaN);
    }
}
