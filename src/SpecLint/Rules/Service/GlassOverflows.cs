using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule("SL8001", "glass-overflows", "More in the glass than it holds", Level.Error, Needs = [Fact.ServedVolume], IsConsequence = true)]
[Limit("glass-fill-reject", "Most")]
[Limit("glass-over-usual", "OverUsual")]
internal sealed partial class GlassOverflows : DrinkRule
{
    /// <summary>
    /// Whether it overflows: the whole range of what is in it lies over. A glass whose size nobody states is judged by the usual one.
    /// </summary>
    internal static bool Overflows(GlassFill glass) =>
        glass.Fill.Low > (glass.IsHouse ? glass.Brim.High : glass.Brim.Typical) * Most.Value / 100;

    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Glass is not { } glass || !Overflows(glass)) return;
        var served = context.Fact(Fact.ServedVolume);
        double room = double.IsNaN(glass.WashLine) ? glass.Brim.Typical * 0.9 : glass.WashLine;
        double aim = (room - glass.Ice) / (1 + (glass.Foam / served.Value));
        var remedy = Resize.To(context, aim, "Pour it into a larger glass");

        // Whether the largest of its kind would hold it.
        bool mayHold = !glass.IsHouse && glass.Fill.Low <= glass.Brim.High * Most.Value / 100;
        bool isClose = mayHold && (glass.IsUp || served.Low <= glass.Brim.Typical * OverUsual.Value / 100);
        string largest = $": the usual one overflows; the largest of its kind ({Say.With(glass.Brim.High, "mL")}) would hold it";
        string together = glass.Foam > 0 || glass.Ice > 0 ? $": together {Say.With(glass.Fill.Typical, "mL")}" : "";
        context.Report(new(Rule)
        {
            AskedLevel = glass.IsHouse ? null : isClose ? Level.Note : Level.Warning,
            At = context.At(drink.Glass.Span, "glass"),
            Message = $"It comes to {glass.Words(served)}{together}, but the {glass.Name} holds {Brim(glass, mayHold)} to the brim, of "
                + $"which {Say.With(Most.Value, "%")} can be carried ({(glass.IsHouse ? Most.Source : glass.Source)})"
                + $"{(mayHold ? largest : "")}.",
            Advice = (mayHold ? "Add the bar's own glass to bar.json with its brim. " : "") + remedy.Words,
            Corrections = remedy.Corrections,
            Evidence =
            [
                Proof.Of(Fact.ServedVolume, served), Proof.Of("foam", glass.Foam, "mL"), Proof.Of("ice displaces", glass.Ice, "mL"),
                glass.BrimProof, Proof.Of(Most),
            ],
            Related = glass.SeeHouse(context.Settings),
        });
    }

    private static string Brim(GlassFill glass, bool mayHold) =>
        mayHold ? "usually " + Say.With(glass.Brim.Typical, "mL")
        : glass.Brim.Low < glass.Brim.High ? $"{Say.Number(glass.Brim.Low)}–{Say.With(glass.Brim.High, "mL")}"
        : Say.With(glass.Brim.Typical, "mL");
}
