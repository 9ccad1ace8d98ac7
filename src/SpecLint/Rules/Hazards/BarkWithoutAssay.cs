using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6005", "bark-without-assay", "Quinine is made from bark that nobody has assayed", Level.Error, Safety = true)]
[Limit("quinine-us", "Quinine")]
[Limit("tolerance-extraction-low", "Extraction")]
internal sealed partial class BarkWithoutAssay : DirectLoadRule
{
    private static readonly FixedList<string> Words = ["assay", "assayed", "alkaloid", "quinine"];

    private static readonly string[] Units = ["%", "mg/g", "mg/kg", "mg/l", "g/kg", "ppm"];

    protected override void Check(RecipeContext context, HazardLoad load)
    {
        if (load.Hazard is not { Id: "cinchona-bark", Contents: [var content, ..] } || IsAssayed(load.Part.Line.Note)) return;
        double litres = context.Profile.InputVolume / 1000;
        string amount = "the dose cannot be computed";
        var evidence = new List<Evidence> { HazardWords.Of(context, load) };
        if (!double.IsNaN(load.Grams) && litres > 0)
        {
            double low = load.Grams * content.Low * (load.Strained ? Extraction.Value / 100 : 1) / litres;
            double high = load.Grams * content.High / litres;
            amount = $"{Say.With(load.Grams, "g")} of it may bring {Say.Number(low, 0)} to {Say.Number(high, 0)} mg of alkaloids a "
                + $"litre, and the limit for a finished tonic drink is {Say.Number(Quinine.Value)} mg/L ({Quinine.Source})";
            evidence.Add(new Evidence("cinchona alkaloids", (low + high) / 2, low, high, "mg/L", content.Source));
        }

        evidence.Add(Proof.Of(Quinine));
        context.Report(new(Rule)
        {
            At = context.ItemOf(load.Part.Line),
            Message = $"`{load.Id}` holds {Say.Number(content.Low / 10)} to {Say.Number(content.High / 10)} % quinine alkaloids, "
                + $"and this bark has no assay: {amount}. Home-made tonic has poisoned people.",
            Advice = "Buy an assayed extract or bottled tonic. For bark, write its assay in the line's note, filter out all powder, "
                + "serve a fixed dose and name quinine on the menu.",
            Caution = HazardWords.Caution,
            Evidence = evidence,
        });
    }

    /// <summary>
    /// An assay is a figure: per cent, or milligrams in a gram, kilogram or litre. That there is none, or that it is to be had, is no
    /// assay.
    /// </summary>
    private static bool IsAssayed(Reading.Given<string> note)
    {
        if (!note.IsGiven || !Phrases.Affirms(note.Value, Words)) return false;
        for (int i = 0; i < note.Value.Length; i++)
        {
            if (!char.IsDigit(note.Value[i])) continue;
            string rest = note.Value.Substring(i);
            foreach (string unit in Units)
            {
                int at = rest.IndexOf(unit, StringComparison.OrdinalIgnoreCase);
                if (at > 0 && rest.Substring(0, at).All(static c => char.IsDigit(c) || c is '.' or ',' or ' ' or '–' or '-')) return true;
            }
        }

        return false;
    }
}
