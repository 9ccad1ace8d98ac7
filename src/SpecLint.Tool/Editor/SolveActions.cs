using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Rules.Service;
using SpecLint.Tool.Editor.Protocol;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor;

/// <summary>A target that a recipe itself names and does not reach.</summary>
/// <param name="Id">Which it is, e.g. <c>glass</c>.</param>
/// <param name="Title">What solving for it is called.</param>
/// <param name="Request">What is asked of the solver.</param>
internal sealed record SolveAction(string Id, string Title, AdjustRequest Request);

/// <summary>Solves the amounts of a recipe for what it says itself: its style, glass, declared strength, target, or what it stands in for.</summary>
internal static class SolveActions
{
    private static readonly Fact[] OfStyle = [Fact.Abv, Fact.Sugar, Fact.Acid, Fact.SugarAcidRatio];

    /// <summary>The targets that a recipe does not reach by its figures.</summary>
    public static IEnumerable<SolveAction> For(OpenBook book, Recipe recipe)
    {
        var profile = book.Profiles.Of(recipe);
        return recipe switch
        {
            Drink drink => ForDrink(book, drink, profile),
            Prep prep => ForPrep(book, prep, profile),
            _ => [],
        };
    }

    /// <summary>
    /// Whether a place of the file is one at which somebody thinks of amounts: the
    /// name, the lines, the glass, the style, the target.
    /// </summary>
    public static bool IsPlaceOf(Recipe recipe, Func<Place, bool> meets) =>
        meets(recipe.Head) || meets(recipe.At(recipe.IngredientsSpan))
        || (recipe is Drink drink
            && ((drink.Glass.IsGiven && meets(recipe.At(drink.Glass.Span))) || (drink.Style.IsGiven && meets(recipe.At(drink.Style.Span)))))
        || (recipe.Declares is { } declares && meets(recipe.At(declares.Span)))
        || (recipe is Prep { Target: { } target } && meets(recipe.At(target.Span)));

    /// <summary>The edits that reach a target; its harm, and what stands in the way, are those of the command.</summary>
    /// <exception cref="RequestException">It cannot be reached, or what reaches it could hurt somebody.</exception>
    public static IReadOnlyList<TextEdit> Solve(OpenBook book, Recipe recipe, SolveAction action)
    {
        // Only what the recipe is made of is read again.
        var input = new BookInput([.. BookPart.Below(book, recipe).Select(f => f.Source)], book.Day)
        {
            Threads = 1,
            HouseSchemas = book.Linked.HouseSchemas,
        };
        var before = Checker.Check(input);
        if (before.Book.Recipes.FirstOrDefault(r => r.Source.Path == recipe.Source.Path) is not { } same)
            throw new RequestException("The recipe cannot be read.");
        var solved = Adjuster.Of(input, before, same, action.Request, out string why) ?? throw new RequestException($"It cannot be solved: {why}.");
        if (solved.Harm.Count > 0) throw new RequestException($"It is not solved: it would bring {solved.Harm[0]}");
        if (!solved.IsChanged) throw new RequestException("No change in the steps of the bar's tools comes nearer.");
        return Differences(recipe, solved.File);
    }

    private static IEnumerable<SolveAction> ForDrink(OpenBook book, Drink drink, RecipeProfile profile)
    {
        if (drink.KnownStyle is { } style)
        {
            var bands = OfStyle.Select(f => (Fact: f, Band: style.Usual(f)))
                .Where(b => b.Band is not null)
                .Select(b => new AdjustTarget(b.Fact, b.Band!.Value.Low, b.Band.Value.High))
                .ToList();
            var missed = bands.FindAll(t => IsMissed(profile.Get(t.Fact), t.Low, t.High));
            if (missed.Count > 0)
                yield return new SolveAction(
                    "style", $"Solve the amounts for the usual {style.Name.ToLowerInvariant()}: {Named(missed)}",
                    new AdjustRequest { Targets = bands });
        }

        if (drink.Declares?.Abv is { IsGiven: true } declared
            && IsMissed(profile.Get(Fact.Abv), declared.Value.BaseLow, declared.Value.BaseHigh, Slack))
            yield return Of("declared", "the declared strength", Fact.Abv, declared.Value.Base);
        if (drink.GlassWritten.Length > 0
            && GlassFill.Of(profile, drink, drink.GlassWritten, book.Linked.Settings) is { } glass
            && !double.IsNaN(glass.Fill.Typical)
            && glass.Fill.Typical > glass.Brim.Typical)
            yield return new SolveAction(
                "glass", $"Solve the amounts to fit the glass {glass.Name.Trim('`').Replace('-', ' ')}",
                new AdjustRequest { Glass = drink.GlassWritten });
    }

    private static IEnumerable<SolveAction> ForPrep(OpenBook book, Prep prep, RecipeProfile profile)
    {
        if (prep.Target is not { } target) yield break;
        if (target.StandsInFor is { IsGiven: true } like && StandIn.Of(profile, book.Profiles, like.Value) is { Holds: false })
            yield return new SolveAction("like", $"Solve the amounts to be like {like.Value}", new AdjustRequest { Like = like.Value });
        if (target.Brix is { IsGiven: true } brix && IsMissed(profile.Get(Fact.Brix), brix.Value.BaseLow, brix.Value.BaseHigh, Slack))
            yield return Of("brix", "the target", Fact.Brix, brix.Value.Base);
        if (target.Abv is { IsGiven: true } abv && IsMissed(profile.Get(Fact.Abv), abv.Value.BaseLow, abv.Value.BaseHigh, Slack))
            yield return Of("abv", "the target", Fact.Abv, abv.Value.Base);
    }

    /// <summary>How far a figure may be from a single value before it counts as missed: what a rounded declaration leaves open.</summary>
    private const double Slack = 0.5;

    private static bool IsMissed(
        FactValue value, double low, double high, double slack = 0) =>
            value.IsKnown && (value.Value < low - slack || value.Value > high + slack);

    private static SolveAction Of(string id, string what, Fact fact, double value) =>
        new(
            id, $"Solve the amounts for {what}: {DisplayUnits.Metric.With(value, Say.Unit(fact))}",
            new AdjustRequest { Targets = [new AdjustTarget(fact, value, value)] });

    private static string Named(List<AdjustTarget> targets) =>
        string.Join(", ", targets.Select(t =>
            $"{ProfileReport.LabelOf(t.Fact)} {Say.Number(t.Low)}–{Say.Number(t.High)} {Say.Unit(t.Fact)}".TrimEnd()));

    /// <summary>An edit for each line that differs; one for the whole where lines came or went.</summary>
    private static List<TextEdit> Differences(Recipe recipe, SourceFile after)
    {
        ReadOnlySpan<byte> old = recipe.Source.Utf8.Span, now = after.Utf8.Span;
        var edits = new List<TextEdit>();
        if (old.Count((byte)'\n') != now.Count((byte)'\n'))
        {
            Add(recipe, edits, 0, old, now);
            return edits;
        }

        for (int at = 0; !old.IsEmpty || !now.IsEmpty;)
        {
            int end = Length(old), nowEnd = Length(now);
            Add(recipe, edits, at, old[..end], now[..nowEnd]);
            at += end;
            old = old[end..];
            now = now[nowEnd..];
        }

        return edits;

        static int Length(ReadOnlySpan<byte> text) => text.IndexOf((byte)'\n') is >= 0 and var at ? at + 1 : text.Length;
    }

    /// <summary>Adds an edit from the first to the last byte that differ, of whole characters; none where nothing does.</summary>
    private static void Add(Recipe recipe, List<TextEdit> edits, int at, ReadOnlySpan<byte> old, ReadOnlySpan<byte> now)
    {
        if (old.SequenceEqual(now)) return;
        int start = old.CommonPrefixLength(now), end = 0;
        while (end < Math.Min(old.Length, now.Length) - start && old[old.Length - 1 - end] == now[now.Length - 1 - end]) end++;
        while (start > 0 && (IsWithin(old, start) || IsWithin(now, start))) start--;
        while (end > 0 && (IsWithin(old, old.Length - end) || IsWithin(now, now.Length - end))) end--;
        edits.Add(new TextEdit(
            recipe.At(new TextSpan(at + start, old.Length - end - start)),
            System.Text.Encoding.UTF8.GetString(now[start..(now.Length - end)])));

        static bool IsWithin(ReadOnlySpan<byte> utf8, int place) => place < utf8.Length && (utf8[place] & 0xC0) == 0x80;
    }
}
