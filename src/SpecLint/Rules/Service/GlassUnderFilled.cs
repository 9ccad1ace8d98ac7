using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8005", "glass-under-filled", "A stemmed glass not half full", Level.Note,
    Needs = [Fact.ServedVolume, Fact.Alcohol], IsConsequence = true)]
[Limit("glass-underfilled", "Least")]
[Limit("glass-tall-underfilled", "Tall")]
internal sealed partial class GlassUnderFilled : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Glass is not { IsIced: false } glass) return;
        bool tall = drink.Glass.Value is { IsIced: true, IsTall: true };
        if (!tall && drink.Glass.Value is not { IsFilledUp: true, IsIced: false }) return;
        var limit = tall ? Tall : Least;
        if (glass.Fill.High >= glass.Brim.Low * limit.Value / 100) return;
        var served = context.Fact(Fact.ServedVolume);
        double room = double.IsNaN(glass.WashLine) ? glass.Brim.Typical * 0.85 : glass.WashLine;
        double aim = room / (1 + (glass.Foam / served.Value));

        // A larger glass is no reason to pour more alcohol than a serve may hold.
        var alcohol = context.Fact(Fact.Alcohol);
        var remedy = alcohol.IsKnown && alcohol.Value * aim / served.Value <= Balance.AlcoholOverServeLimit.LimitOf(context.Settings).Grams
            ? Resize.To(context, aim, "Pour it into a smaller glass")
            : Balance.Remedy.Say("Pour it into a smaller glass.");
        context.Report(new(Rule)
        {
            At = context.At(drink.Glass.Span, "glass"),
            Message = $"It comes to {glass.Words(served)}, less than {Say.With(limit.Value, "%")} of the "
                + $"{Say.With(glass.Brim.Typical, "mL")} of {glass.Name}: it looks half poured ({limit.Source}).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence = [Proof.Of(Fact.ServedVolume, served), glass.BrimProof, Proof.Of(limit)],
            Related = glass.SeeHouse(context.Settings),
        });
    }
}
