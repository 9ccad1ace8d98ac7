using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5018: raw egg kept in a preparation.</summary>
internal sealed class RawEggKept : PrepRule
{
    private static readonly Limit Most = Limits.Of("keep-raw-egg");
    private static readonly Limit AgedStrength = Limits.Of("eggnog-aged-strength");
    private static readonly Limit AgedDays = Limits.Of("eggnog-aged-days");

    private static readonly RuleInfo Rule = new("SL5018", "raw-egg-kept", "Raw egg is kept in a preparation", Level.Error)
    {
        Safety = true,
        Needs = [Fact.Abv],
        Limits = [Most.Id, AgedStrength.Id, AgedDays.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>Whether an ingredient is egg that nothing says was pasteurised.</summary>
    internal static bool IsRawEgg(Material material) =>
        material is { Kind: "egg", Ingredient: { } egg } && !Storage.Has(egg.Id, "pasteuri") && !(egg.Name.IsGiven && Storage.Has(egg.Name.Value, "pasteuri"))
        && !Storage.Has(egg.Id, "dried") && !Storage.Has(egg.Id, "powder");

    /// <summary>The raw egg that this rule speaks of; <see langword="null"/> where it is silent.</summary>
    internal static Part? EggOf(RecipeContext context, Prep prep)
    {
        if (!(Storage.Days(prep) > SpecialCases.MarkedFromDays)) return null;
        Part? egg = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Beside && part.Line.Role != LineRole.Fining && part.Material is { } material && IsRawEgg(material)) egg ??= part;
        }

        return egg is null || IsHeated(prep) ? null : egg;
    }

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (EggOf(context, prep) is not { } egg) return;
        double days = Storage.Days(prep);
        var state = context.Profile.Keeping!;
        bool aged = state.Abv.IsKnown && state.Abv.Low >= AgedStrength.Value && days >= AgedDays.Value;
        context.Report(new Finding(Rule)
        {
            AskedLevel = aged ? Level.Warning : null,
            Place = context.At(egg.Line.Item.Span),
            Subject = context.Id,
            Path = RecipeContext.PathOf(egg.Line, "item"),
            Message = aged
                ? $"Raw egg is kept {KeepingWords.Days(days)} at {Say.Fact(Fact.Abv, state.Abv)}: one demonstration had Salmonella die off in {KeepingWords.Days(AgedDays.Value)} at {Say.Number(AgedStrength.Value)} % vol, which is no validated process ({AgedStrength.Source})."
                : $"Raw egg is kept {KeepingWords.Days(days)}; food made with egg that is not cooked takes pasteurised egg (US Food Code 3-302.13), and raw egg once cracked keeps {KeepingWords.Days(Most.Value)} at the most (common practice, no source).",
            Advice = "Use pasteurised egg, or make it for the shift and tell guests that it holds raw egg.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("keep.for", days, "d"), Proof.Of(Fact.Abv, state.Abv), Proof.Of(Most)],
        });
    }

    private static bool IsHeated(Prep prep)
    {
        foreach (var step in prep.Method)
        {
            var heat = step.To.IsGiven ? step.To : step.At;
            if (!heat.IsGiven || heat.Value.Dimension != Dimension.Temperature || !step.For.IsGiven) continue;
            var t = new Celsius(heat.Value.BaseLow);
            ReadOnlySpan<TemperatureReading> record = [new(0, t), new(step.For.Value.BaseLow / 60, t)];
            if (HeatProcesses.Meets(HeatedProduct.SweetenedYolk, record) == true || HeatProcesses.Meets(HeatedProduct.EggNog, record) == true) return true;
        }

        return false;
    }
}
