using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5027: a live ferment in a closed vessel.</summary>
internal sealed class FermentSealed : PrepRule
{
    private static readonly Limit Volumes = Limits.Of("ferment-carbonation");
    private static readonly Limit Pressure = Limits.Of("ferment-sealed-pressure");

    /// <summary>The warmest that a closed bottle is reckoned with, as the limit of pressure is.</summary>
    private static readonly Celsius Warm = new(30);

    private static readonly RuleInfo Rule = new("SL5027", "ferment-sealed", "A live ferment is sealed with sugar left to ferment", Level.Error)
    {
        Safety = true,
        Limits = [Volumes.Id, Pressure.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Keep is not { } keep || !keep.Sealed.Or(false) || !SpecialCases.IsFerment(prep) || IsStopped(prep)) return;
        if (FermentSalt.IsInBrine(context.Profile)) return;
        double litres = context.Profile.InputVolume / 1000;
        double gramsPerLitre = SugarLeft(context, prep, litres, out string from);
        if (double.IsNaN(gramsPerLitre)) return;

        // 1 g of glucose gives 0.489 g of carbon dioxide.
        double volumes = gramsPerLitre * 0.489 / GasVolumes.GramsPerLitrePerVolume;
        var closed = new double[Components.Count];
        closed[(int)Component.Water] = 1000;
        closed[(int)Component.Glucose] = gramsPerLitre;
        var end = Carbonation.OfLiveFerment(closed, Warm);
        double rating = keep.Rating is { IsGiven: true, Value.Dimension: Dimension.Pressure } ? keep.Rating.Value.BaseLow : double.NaN;
        double most = double.IsNaN(rating) ? Pressure.Value : rating;
        bool bursts = volumes > Volumes.Value && (end is null || end.Value.GaugePressure.Value > most);
        if (!bursts) return;
        string pressure = end is { } e ? $"{Say.Number(e.GaugePressure.Value, 1)} bar" : "over 9 bar";
        context.Report(new Finding(Rule)
        {
            Place = context.At(keep.Sealed.Span),
            Subject = context.Id,
            Path = "keep.sealed",
            Message = $"The ferment is sealed with {from} {Say.Number(gramsPerLitre, 0)} g/L of sugar: if it all ferments that makes {Say.Number(volumes, 1)} volumes of carbon dioxide and {pressure} at 30 °C, over the {(double.IsNaN(rating) ? $"{Say.Number(most)} bar of a house bottle ({Pressure.Source})" : $"{Say.Number(most)} bar that the vessel is rated for")}.",
            Advice = "Keep it with the cap loose and cold, vent it daily, or move it to a keg with a relief valve rated for the pressure.",
            Caution = "A bottle that bursts throws glass: wear eye protection, open cold and covered, and never warm a sealed ferment. The maker's rating of the vessel and local rules decide.",
            Evidence = [Proof.Of("sugar left", gramsPerLitre, "g/L"), Proof.Of("carbon dioxide", volumes, "1"), Proof.Of(Volumes), Proof.Of(Pressure)],
        });
    }

    private static double SugarLeft(RecipeContext context, Prep prep, double litres, out string from)
    {
        if (prep.Measured is { Brix.IsGiven: true } measured)
        {
            from = "up to";

            // Dissolved solids are mostly sugar; water weighs about as much as the drink.
            return measured.Brix.Value.Base * 10;
        }

        from = "up to";
        double sugar = 0;
        var grams = context.Profile.Grams;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++)
        {
            if (c != Component.Lactose) sugar += grams[(int)c];
        }

        if (!(litres > 0)) return double.NaN;
        double left = sugar / litres;

        // What has become ethanol is no longer sugar: 1 g of glucose gives 0.511 g.
        if (prep.Measured is { Abv.IsGiven: true } strength) left -= strength.Abv.Value.Base * 7.8924 / 0.511;
        return Math.Max(0, left);
    }

    private static bool IsStopped(Prep prep)
    {
        bool stopped = false;
        foreach (var step in prep.Method)
        {
            // What was boiled before it was inoculated still ferments.
            if (step.Verb.StopsFerment) stopped = true;
            else if (step.Verb.Ferments) stopped = false;
        }

        return stopped;
    }
}
