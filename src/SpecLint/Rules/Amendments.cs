using System.Text.RegularExpressions;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules;

/// <summary>
/// What a correction of a line takes with it: the steps follow a name, and the yield and the shares of a preparation follow an
/// amount, where they agreed with what was written before.
/// </summary>
internal static class Amendments
{
    private static readonly Limit Over = Limits.Of("yield-tolerance");
    private static readonly Limit Loose = Limits.Of("yield-agrees-over");
    private static readonly Limit Under = Limits.Of("yield-agrees");
    private static readonly Limit Apart = Limits.Of("amount-share-of-amount");
    private static readonly Regex NewLine = new(
        "\"item\": \"(?<item>[^\"]+)\", \"amount\": \"(?<amount>[^\"]+)\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        TimeSpan.FromSeconds(1));

    /// <summary>The correction with what follows from it.</summary>
    public static Correction With(RecipeContext context, Correction correction)
    {
        if (correction.Edits.Count == 0) return correction;
        var more = new List<TextEdit>();
        Names(context, correction, more);
        NewNames(context, correction, more);
        if (context.Recipe is Prep prep && !correction.KeepsTheThing) Amounts(context, prep, correction, more);
        return more.Count == 0 ? correction : correction with { Edits = [.. correction.Edits, .. more] };
    }

    private static void Names(RecipeContext context, Correction correction, List<TextEdit> more)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Item.IsGiven || EditOf(context, correction, part.Line.Item.Span) is not { } edit) continue;
            foreach (var step in context.Recipe.Method)
            {
                foreach (var item in step.Items)
                {
                    if (item.Value == part.Line.Item.Value && EditOf(context, correction, item.Span) is null)
                        more.Add(new TextEdit(context.At(item.Span), edit.NewText));
                }
            }
        }
    }

    /// <summary>A line that is added stands in the step that names the most, where the steps name what they use.</summary>
    private static void NewNames(RecipeContext context, Correction correction, List<TextEdit> more)
    {
        Step? most = null;
        foreach (var step in context.Recipe.Method)
        {
            if (step.Items.Count > 1 && (most is null || step.Items.Count > most.Items.Count)) most = step;
        }

        if (most is null) return;
        foreach (var edit in correction.Edits)
        {
            if (edit.Place.File != context.File.Source
                || edit.Place.Span.Length > 0
                || NewLine.Match(edit.NewText) is not { Success: true } line)
                continue;
            var behind = context.At(new TextSpan(most.Items[most.Items.Count - 1].Span.End, 0));
            more.Add(new TextEdit(behind, $", \"{line.Groups["item"].Value}\""));
        }
    }

    private static void Amounts(RecipeContext context, Prep prep, Correction correction, List<TextEdit> more)
    {
        var parts = context.Profile.Parts;
        double[] grams = new double[parts.Count];
        double before = 0, after = 0;
        Span<double> mix = stackalloc double[Science.Components.Count];
        context.Profile.MixGrams.CopyTo(mix);
        bool changed = false;
        for (int i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed || part.Material is not { } material) return;
            grams[i] = part.Grams.Typical;
            if (part.Line.Amount.IsGiven && EditOf(context, correction, part.Line.Amount.Span) is { } edit)
            {
                grams[i] = Weigh(context, material, edit.NewText.Trim('"'), part);
                if (double.IsNaN(grams[i])) return;
                changed = true;
            }

            before += part.Grams.Typical;
            after += grams[i];
            if (part.Phase == PartPhase.Mix) Add(mix, material, grams[i] - part.Grams.Typical);
        }

        foreach (var edit in correction.Edits)
        {
            if (edit.Place.Span.Length > 0
                || NewLine.Match(edit.NewText) is not { Success: true } line
                || context.Profiles.MaterialOf(line.Groups["item"].Value) is not { } material)
                continue;
            double more1 = Weigh(context, material, line.Groups["amount"].Value, null);
            if (double.IsNaN(more1)) return;
            after += more1;
            Add(mix, material, more1);
            changed = true;
        }

        if (!changed || !(before > 0) || !(after > 0)) return;
        double volumeBefore = context.Profile.InputVolume, volumeAfter = Solving.VolumeOf(mix);
        Yield(
            context,
            prep,
            correction,
            prep.Yield.IsGiven && prep.Yield.Value.Dimension == Dimension.Volume ? (volumeBefore, volumeAfter) : (before, after),
            more);
        Shares(context, correction, grams, (before, after), more);
    }

    /// <summary>Where one share is no longer that of its amount, all are written anew, so that they add up.</summary>
    private static void Shares(
        RecipeContext context, Correction correction, double[] grams, (double Before, double After) all, List<TextEdit> more)
    {
        var parts = context.Profile.Parts;
        var edits = new List<TextEdit>();
        bool moved = false;
        for (int i = 0; i < parts.Count; i++)
        {
            var share = parts[i].Line.Share;
            if (share is not { IsGiven: true, Value.Dimension: Dimension.PercentByMass }
                || EditOf(context, correction, share.Span) is not null)
                continue;
            double stated = share.Value.Base, now = 100 * grams[i] / all.After;
            moved |= Math.Abs(now - stated) > stated * Apart.Value / 100;
            edits.Add(new TextEdit(context.At(share.Span), Rounding.Text(Round(now), share.Value)));
        }

        if (moved) more.AddRange(edits);
    }

    /// <summary>A yield that agreed with what went in follows it; one that agrees with what goes in now was right all along.</summary>
    private static void Yield(
        RecipeContext context, Prep prep, Correction correction, (double Before, double After) all, List<TextEdit> more)
    {
        if (!prep.Yield.IsGiven
            || prep.Yield.Value.Dimension is not (Dimension.Mass or Dimension.Volume)
            || EditOf(context, correction, prep.Yield.Span) is not null)
            return;
        double yield = prep.Yield.Value.Base;
        if (double.IsNaN(all.Before)
            || double.IsNaN(all.After)
            || !Agrees(yield, all.Before, Loose.Value)
            || (Agrees(yield, all.After, Over.Value) && Math.Abs((yield / all.After) - 1) <= Math.Abs((yield / all.Before) - 1)))
            return;
        more.Add(new TextEdit(context.At(prep.Yield.Span), Rounding.Text(Round(yield * all.After / all.Before), prep.Yield.Value)));
    }

    private static bool Agrees(double yield, double all, double over) =>
        yield <= all * (1 + (over / 100)) && yield >= all * (1 - (Under.Value / 100));

    private static double Weigh(RecipeContext context, Material material, string text, Part? part)
    {
        if (!QuantityReader.TryRead(text, context.Settings.Measures, out var amount, out _)) return double.NaN;
        if (part is not null && amount.Dimension == part.Line.Amount.Value.Dimension && part.Line.Amount.Value.Base > 0)
            return part.Grams.Typical * amount.Base / part.Line.Amount.Value.Base;
        return amount.Dimension switch
        {
            Dimension.Mass => amount.Base,
            Dimension.Volume => amount.Base * material.Density,
            _ => double.NaN,
        };
    }

    private static void Add(Span<double> mix, Material material, double grams)
    {
        var per = material.PerGram;
        for (int i = 0; i < mix.Length; i++) mix[i] = Math.Max(0, mix[i] + (grams * per[i]));
    }

    private static double Round(double value)
    {
        double digit = Math.Pow(10, Math.Floor(Math.Log10(value)) - 2);
        return Math.Round(value / digit) * digit;
    }

    private static TextEdit? EditOf(RecipeContext context, Correction correction, TextSpan span)
    {
        // By index: it is asked for every item of every step, and an enumerator is an object.
        var edits = correction.Edits;
        for (int i = 0; i < edits.Count; i++)
        {
            if (edits[i].Place.Span.Equals(span) && edits[i].Place.File == context.File.Source) return edits[i];
        }

        return null;
    }
}
