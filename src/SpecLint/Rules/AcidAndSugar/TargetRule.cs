using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>A target of a preparation, held against what the recipe comes to.</summary>
internal abstract class TargetRule : PrepRule
{
    /// <summary>What a preparation comes to in the basis of its target.</summary>
    /// <param name="Value">Value and range.</param>
    /// <param name="Measure">How it is worked out from a composition, for solving; <see langword="null"/> where nothing is solved.</param>
    /// <param name="Unit">Unit for sentences.</param>
    /// <param name="Ucum">Unit in UCUM.</param>
    protected readonly record struct Came(FactValue Value, Solving.Measure? Measure, string Unit, string Ucum);

    /// <summary>The target.</summary>
    protected abstract Given<Quantity> TargetOf(Target target);

    /// <summary>Name of the target's property.</summary>
    protected abstract string Property { get; }

    /// <summary>What it is, in words: "sugar".</summary>
    protected abstract string Noun { get; }

    /// <summary>What the preparation comes to; <see langword="null"/> where the basis cannot be answered.</summary>
    protected abstract Came? Comes(RecipeContext context, Quantity target);

    /// <summary>The parts that are moved to reach the target.</summary>
    protected abstract bool IsMoved(Part part);

    /// <summary>How far a value may be from the target, in its unit.</summary>
    protected abstract (double Off, Limit Limit) Tolerance(double target);

    /// <summary>What else the message says.</summary>
    protected virtual string More(RecipeContext context, Quantity target) => "";

    /// <summary>What to do where no amount is solved.</summary>
    protected virtual string Otherwise(bool over) =>
        over
            ? $"Lower the source of the {Noun}, or write the target that it reaches."
            : $"Raise the source of the {Noun}, or write the target that it reaches.";

    /// <summary>Whether another rule says it better.</summary>
    protected virtual bool IsSaidElsewhere(RecipeContext context, Prep prep, Quantity target, FactValue value) => false;

    /// <inheritdoc/>
    public sealed override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is not { } target || TargetOf(target) is not { IsGiven: true } given) return;
        if (Comes(context, given.Value) is not { Value: { IsKnown: true } value } came) return;
        double low = given.Value.BaseLow, high = given.Value.BaseHigh, middle = given.Value.Base;
        var (off, limit) = Tolerance(middle);
        if (Findings.Check.Within(value, low - off, high + off) != Stand.Broken) return;
        if (IsSaidElsewhere(context, prep, given.Value, value)) return;
        bool over = value.Value > middle;
        string measured = value.From == "measured" ? " as measured" : "";
        var remedy = Solve(context, prep, came, middle, Otherwise(over));
        context.Report(new(Info)
        {
            AskedLevel = limit.LevelCap,
            At = context.At(given.Span, $"target.{Property}"),
            Message = $"The {Noun} comes to {Say.Range(value.Value, value.Low, value.High, came.Unit)}{measured}, "
                + $"{(over ? "above" : "below")} the target of {Say.With(middle, came.Unit)} by more than the tolerance of "
                + $"{Say.With(off, came.Unit)} ({limit.Source}){More(context, given.Value)}.",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence =
            [
                new Evidence(Noun, value.Value, value.Low, value.High, came.Ucum, Text: value.From),
                new Evidence($"target.{Property}", middle, low, high, came.Ucum, Place: context.At(given.Span)),
                Proof.Of(limit),
            ],
        });
    }

    /// <summary>Whether what is made of a recipe follows from its parts alone.</summary>
    protected static bool IsPlainMix(Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (step.Verb.BoilsDown || step.Verb.Dries || step.Verb.Ferments) return false;
        }

        return prep.Family.OrNone() is { Ferments: false, IsDry: false, TakesFatOut: false };
    }

    private Remedy Solve(RecipeContext context, Prep prep, Came came, double target, string otherwise)
    {
        if (came.Measure is null || came.Value.From == "measured" || !IsPlainMix(prep)) return Remedy.Say(otherwise);
        double factor = Solving.Factor(context.Profile, IsMoved, came.Measure, target);
        if (double.IsNaN(factor) || factor <= Guards.LeastFactor) return Remedy.Say(otherwise);
        var words = new List<string>();
        var edits = new List<TextEdit>();
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null || !IsMoved(part)) continue;
            var amount = part.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")} instead of {Rounding.Words(amount.Base, amount)}");
            if (Math.Abs(rounded - amount.Base) > 1e-9) edits.Add(context.Rewrite(part.Line.Amount.Span, Rounding.Words(rounded, amount)));
        }

        if (edits.Count == 0) return Remedy.Say(otherwise);
        string take = $"Take {Say.List(words)}: that gives {Say.With(target, came.Unit)}.";
        return new Remedy(take, Correction.Propose(take, edits));
    }

    /// <summary>A content by mass or by volume, as the target's basis asks.</summary>
    protected static Came? Content(RecipeContext context, Quantity target, Fact fact, Solving.Measure byMass, Solving.Measure perVolume)
    {
        var value = context.Fact(fact);
        if (!value.IsKnown) return null;
        bool solid = context.Profile.IsSolid;
        if (target.Dimension == Dimension.PercentMassInVolume && !solid) return new Came(value, perVolume, "g/100 mL", "g/dL");
        if (target.Dimension != Dimension.PercentByMass) return null;
        if (solid) return new Came(value, byMass, "% w/w", "%");
        if (context.Fact(Fact.Density) is not { IsKnown: true, Value: > 0 and var per }) return null;
        var perGram = value with { Value = value.Value / per, Low = value.Low / per, High = value.High / per };
        return new Came(perGram, byMass, "% w/w", "%");
    }
}
