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
        if (range is null || !given.IsGiven || given.Value.Dimension != Dimension) return;
        var amount = given.Value;
        if (!range.Excludes(amount.BaseLow, amount.BaseHigh)) return;
        bool over = amount.BaseLow > range.High;
        double limit = over ? range.High : range.Low;
        string written = Written.Text(context, given.Span);
        var reading = Reading(amount, range);
        string meant = reading.Unit.Length == 0 ? "" : $" As {reading.Words} it would be {Words(reading.Base)}, which is usual.";
        context.Report(new(Info)
        {
            AskedLevel = range.MustNot && over && range.Mark != Mark.Memory ? Level.Error : null,
            At = context.At(given.Span, path),
            Message = $"{what} {written}, {(over ? "above" : "below")} the plausible {(over ? "maximum" : "minimum")} of {Words(limit)} ({range.Condition}; {range.Source}).{meant}",
            Advice = reading.Unit.Length > 0 ? $"Write {reading.Words}if that is meant. Otherwise check the number." : "Check the number and its unit.",
            Evidence = [Proof.Of("written", amount, context.At(given.Span)), Proof.Of(over ? "plausible most" : "plausible least", limit, BaseUnit, range.Source)],
            Corrections = reading.Unit.Length == 0 ? [] : [new Correction(CorrectionGrade.Proposed, $"Write {reading.Words}.", [new TextEdit(context.At(given.Span), $"\"{reading.Words}\"")])],
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
            string number = amount.Low < amount.High ? $"{Say.Number(amount.Low)}–{Say.Number(amount.High)}" : Say.Number(amount.Value);
            return (unit, $"{number} {unit}", (amount.Value * factor) + offset);
        }

        return ("", "", double.NaN);
    }

    /// <summary>The steps of a recipe, each with its path; none for another file.</summary>
    protected static IEnumerable<(RecipeContext Context, Step Step, string Path)> Steps(FileContext context)
    {
        if (context is not RecipeContext recipe) yield break;
        foreach (var step in recipe.Recipe.Method) yield return (recipe, step, recipe.PathOf(step));
    }

    /// <summary>The start of a sentence about a step.</summary>
    protected static string Named(Step step) => $"The step `{(step.Do.IsGiven ? step.Written : "?")}`";
}
