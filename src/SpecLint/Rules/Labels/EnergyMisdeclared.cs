using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>SL7011: declared energy is not what it comes to.</summary>
internal sealed class EnergyMisdeclared : RecipeRule
{
    private static readonly Limit Tolerance = Limits.Of("energy-tolerance");

    private static readonly RuleInfo Rule = new("SL7011", "energy-misdeclared", "The declared energy is not what it comes to", Level.Warning)
    {
        Needs = [Fact.Energy],
        Limits = ["energy-tolerance"],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Energy.IsGiven: true } declares || declares.Energy.Value.Dimension != Dimension.Energy) return;
        var energy = context.Fact(Fact.Energy);
        if (!energy.IsKnown) return;
        double declared = declares.Energy.Value.Base;
        double slack = declared * Tolerance.Value / 100;
        if (energy.Low <= declared + slack && energy.High >= declared - slack) return;
        string right = Say.Number(Math.Round(energy.Value / 5, MidpointRounding.AwayFromZero) * 5, 0);
        string per = context.Recipe is Drink ? "a serve" : context.Profile.IsSolid ? "100 g" : "100 mL";
        context.Report(new Finding(Rule)
        {
            Place = context.At(declares.Energy.Span),
            Subject = context.Id,
            Path = "declares.energy",
            Message = $"Declared at {Say.Number(declared)} kcal, {per} comes to {Say.Fact(Fact.Energy, energy)} by the factors of Reg (EU) 1169/2011 Annex XIV, more than {Say.Number(Tolerance.Value)} % off ({Tolerance.Source}).",
            Advice = $"Declare {right} kcal.",
            Evidence = [Proof.Of(Fact.Energy, energy), Proof.Of("declared", declares.Energy.Value, context.At(declares.Energy.Span)), Proof.Of(Tolerance)],
            Corrections = [new Correction(CorrectionGrade.Proposed, $"Declare {right} kcal.", [new TextEdit(context.At(declares.Energy.Span), $"\"{right} kcal\"")])],
        });
    }
}
