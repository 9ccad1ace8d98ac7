using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.File;

[Rule("SL1014", "text-against-amount", "The method or the notes name another amount than the line", Level.Warning)]
[Limit("amount-text-apart", "Apart")]
[Limit("ratio-text-apart", "RatioApart")]
internal sealed partial class TextAgainstAmount : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var recipe = context.Recipe;
        foreach (var step in recipe.Method)
        {
            if (step.Amount.IsGiven) InStep(context, step);
            if (step.Note.IsGiven) InText(context, step.Note, context.PathOf(step) + ".note", step);
            if (step.Until.IsGiven) InText(context, step.Until, context.PathOf(step) + ".until", step);
        }

        for (int i = 0; i < recipe.Notes.Count; i++)
            InText(context, recipe.Notes[i], recipe.Notes.Count == 1 ? "notes" : $"notes[{i + 1}]", null);
        foreach (var line in recipe.Ingredients)
        {
            if (!line.Note.IsGiven) continue;
            InText(context, line.Note, RecipeContext.PathOf(line, "note"), null);
            InConversion(context, line);
        }
    }

    /// <summary>A line's note that is an amount, and perhaps where it holds ("45 ml in the other bar"), says the line once more.</summary>
    private static void InConversion(RecipeContext context, Line line)
    {
        string note = line.Note.Value;
        if (!line.Amount.IsGiven
            || !AmountsInText.Next(note, 0, out var spoken)
            || spoken.Start > 0
            || spoken.Amount.Dimension != line.Amount.Value.Dimension
            || note.Substring(spoken.End).Split([' '], StringSplitOptions.RemoveEmptyEntries).Length > MostWordsOfPlace
            || SaysPart(note)
            || AmountsInText.PartNamed(context.Profile, note, spoken.End) is not null
            || !AmountsInText.Differ(spoken.Amount, line.Amount.Value, Apart.Value))
            return;
        double ratio = spoken.Amount.Base / line.Amount.Value.Base;
        if (ratio > Guards.OtherSize || ratio < 1 / Guards.OtherSize) return;
        Report(context, line.Note.Span, RecipeContext.PathOf(line, "note"), line, note.Substring(0, spoken.End));
    }

    private const int MostWordsOfPlace = 4;

    /// <summary>The amount of a step with one item: part of the line in several steps, all of it in one.</summary>
    private static void InStep(RecipeContext context, Step step)
    {
        if (step.Items.Count != 1 || Find(context.Profile, step.Items[0].Value) is not { Line.Amount.IsGiven: true } part) return;
        double sum = 0;
        int steps = 0;
        bool open = false;
        foreach (var other in context.Recipe.Method)
        {
            bool names = false;
            foreach (var item in other.Items) names |= item.Value == step.Items[0].Value;
            if (!names) continue;
            steps++;
            if (other is { Amount.IsGiven: true, Items.Count: 1 } && other.Amount.Value.Dimension == step.Amount.Value.Dimension)
                sum += other.Amount.Value.Base;
            else
                open = true;
        }

        var line = part.Line.Amount.Value;
        var amount = step.Amount.Value;
        if (amount.Dimension != line.Dimension || !AmountsInText.Differ(amount, line, Apart.Value)) return;

        // Several steps may share the line; then their sum counts, and only what is over the line is wrong for certain.
        bool over = amount.Base > line.BaseHigh;
        if (!over && (open || (steps > 1 && Math.Abs(sum - line.Base) <= line.Base * Apart.Value / 100))) return;
        Report(context, step.Amount.Span, context.PathOf(step) + ".amount", part.Line, Written.Text(context, step.Amount.Span));
    }

    /// <summary>Amounts that a text calls equal and that are not: those of the parts it names, else of all that is measured out.</summary>
    private static void HoldEqual(RecipeContext context, Given<string> text, string path)
    {
        if (!text.IsGiven || AmountWords.EqualAmounts.FirstOrDefault(w => Phrases.Holds(text.Value, w)) is not { } said) return;
        if (Phrases.HasAny(text.Value, AmountWords.Otherwise)) return;
        var poured = new List<Part>();
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line is { Role: LineRole.Part or LineRole.Muddle, Amount: { IsGiven: true, Value: var amount }, Item.IsGiven: true }
                && amount.Dimension == Dimension.Volume
                && Written.IsPoured(amount.Unit))
                poured.Add(part);
        }

        var named = poured.FindAll(p =>
            Array.Exists(p.Line.Item.Value.Split('-'), w => w.Length > 2 && Hazards.HazardWords.HasWords(text.Value, w)));
        if (named.Count == 1) return;
        var equal = named.Count > 1 ? named : poured;
        if (equal.Count < 2
            || equal.Find(p => AmountsInText.Differ(p.Line.Amount.Value, equal[0].Line.Amount.Value, Apart.Value)) is not { } other)
            return;
        string lines = Say.List([.. equal.Select(p => $"{Written.Text(context, p.Line.Amount.Span)} of {Written.Item(p.Line)}")], "and");
        context.Report(new(Rule)
        {
            At = context.At(text.Span, path),
            Key = "equal",
            Message = $"The text says \"{said}\", but the lines say {lines}.",
            Advice = "Find out which is made, and correct the other.",
            Evidence = [Proof.Of("text", said, context.At(text.Span))],
            Related = [context.See(other.Line.Amount.Span, "another amount")],
        });
    }

    /// <summary>A ratio between two parts that a text says and that their amounts do not have.</summary>
    private static void HoldRatio(RecipeContext context, Given<string> text, string path)
    {
        if (!text.IsGiven) return;
        foreach (var ratio in RatiosInText.Of(context, text.Value))
        {
            if (ratio.IsMet(RatioApart.Value)) continue;
            context.Report(new(Rule)
            {
                At = context.At(text.Span, path),
                Key = "ratio",
                Message = $"The text says \"{ratio.Words}\", a ratio of {Say.Number(ratio.Said, 2)}, but the lines have "
                    + $"{Say.Number(ratio.Written, 2)}: {ratio.AmountsOf(context)} (differences up to {Say.Number(RatioApart.Value)} % are ignored; "
                    + $"{RatioApart.Source}).",
                Advice = ratio.IsExchanged(RatioApart.Value)
                    ? "The two amounts are exchanged: write each on the other line."
                    : "Find out which is made, and correct the other.",
                Evidence =
                [
                    Proof.Of("ratio of the text", ratio.Said, "1"),
                    Proof.Of("ratio of the lines", ratio.Written, "1"),
                    Proof.Of(RatioApart),
                ],
                Related = [context.See(ratio.First.Line.Amount.Span, "the first"), context.See(ratio.Second.Line.Amount.Span, "the second")],
                Corrections = ratio.Exchange(context, RatioApart.Value),
            });
            return;
        }
    }

    private static void InText(RecipeContext context, Given<string> text, string path, Step? step)
    {
        HoldEqual(context, text, path);
        HoldRatio(context, text, path);
        int from = 0;
        while (AmountsInText.Next(text.Value, from, out var spoken))
        {
            from = spoken.End;
            var part = AmountsInText.PartNamed(context.Profile, text.Value, spoken.End);
            if (part is null && step is { Items.Count: 1, Amount.IsGiven: false, Verb.Adds: true } && IsBareAmount(text.Value, spoken))
                part = Find(context.Profile, step.Items[0].Value);
            if (part is not { Line.Amount.IsGiven: true }
                || !AmountsInText.Differ(spoken.Amount, part.Line.Amount.Value, Apart.Value))
                continue;

            // A text may speak of a part of it, or of another size of batch.
            double ratio = spoken.Amount.Base / part.Line.Amount.Value.Base;
            if (SaysPart(text.Value) || (step is null && (ratio > Guards.OtherSize || ratio < 1 / Guards.OtherSize))) continue;
            Report(context, text.Span, path, part.Line, text.Value.Substring(spoken.Start, spoken.End - spoken.Start));
            return;
        }
    }

    /// <summary>The text is the amount and nothing else, as in a step that adds one item.</summary>
    private static bool IsBareAmount(string text, SpokenAmount spoken) => spoken.Start == 0 && spoken.End == text.Length;

    private static bool SaysPart(string text) => AmountWords.PartOfIt.Any(word => Phrases.Holds(text, word));

    private static Part? Find(RecipeProfile profile, string item)
    {
        Part? found = null;
        foreach (var part in profile.Parts)
        {
            if (!part.Line.Item.IsGiven || part.Line.Item.Value != item) continue;
            if (found is not null) return null;
            found = part;
        }

        return found;
    }

    private static void Report(RecipeContext context, TextSpan span, string path, Line line, string spoken)
    {
        string written = Written.Text(context, line.Amount.Span);
        context.Report(new(Rule)
        {
            At = context.At(span, path),
            Key = line.Item.Or(""),
            Message = $"The text says {spoken} of {Written.Item(line)}, but the line says {written}. Two people will make two different "
                + "drinks.",
            Advice = "Find out which is made, and correct the other. It is best to give the amount only on the line.",
            Evidence = [Proof.Of("line", line.Amount.Value, context.At(line.Amount.Span)), Proof.Of("text", spoken, context.At(span))],
            Related = [context.See(line.Amount.Span, "the line")],
        });
    }
}
