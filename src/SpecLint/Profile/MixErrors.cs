using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// The errors of the models by what a mix is made of: ethanol and water, sucrose and water and other single solutes have their own,
/// known solutes together that of a mixture, and solids that no table tells apart add what they leave open.
/// </summary>
internal static class MixErrors
{
    /// <summary>Other parts up to this share of the whole leave a pair of substances what it is; far under every error.</summary>
    private const double Trifle = 1e-6;

    private static readonly Limit OneKind = Limits.Of("one-kind-of-solute");
    private static readonly Limit FoodShare = Limits.Of("food-share");

    /// <summary>Of the strength as a share by volume.</summary>
    public static ModelError Strength(Mix of) => IsPair(of, Component.Ethanol) ? EthanolWater.StrengthError : Mixture.AbvError;

    /// <summary>A density with the errors of its model, g/mL.</summary>
    /// <param name="density">The density, g/mL.</param>
    /// <param name="of">What has it.</param>
    /// <param name="interplay">Product of the strength by volume (0 to 1) and the solutes in g/L.</param>
    public static Estimate WithDensity(Estimate density, Mix of, double interplay)
    {
        double rho = 1000 * density.Value;
        var error = IsPair(of, Component.Ethanol) ? EthanolWater.DensityError : IsPair(of, Component.Sucrose) ? SugarWater.DensityError : Mixture.DensityError;
        var all = error.At(rho).With(Mixture.UntoldDensityError.At(Untold(of))).With(Mixture.InterplayError.At(interplay));
        return density.With(new StandardError(all.Value / 1000)).NotNegative
            .Tested(error.IsTested(rho) && Mixture.InterplayError.IsTested(interplay) && Solubilities.HoldAll(of));
    }

    /// <summary>°Brix with the errors of its model.</summary>
    public static Estimate WithBrix(Estimate brix, Mix of)
    {
        var error = IsPair(of, Component.Sucrose) ? SugarWater.RefractiveBrixError : Mixture.BrixError;
        return brix.With(error.At(brix.Value).With(Mixture.UntoldBrixError.At(100 * Untold(of))))
            .Within(0, 100)
            .Tested(error.IsTested(brix.Value) && Solubilities.HoldAll(of));
    }

    /// <summary>Water activity with the error of its model.</summary>
    public static Estimate WithActivity(Estimate activity, Mix of)
    {
        var error = IsPair(of, Component.Ethanol) ? EthanolActivity.Error : IsOneSolute(of) ? WaterActivityModel.Error : WaterActivityModel.MixtureError;
        return activity.With(error.At(activity.Value)).Within(0, 1).Tested(error.IsTested(activity.Value) && Solubilities.HoldAll(of));
    }

    /// <summary>A freezing point with the error of its model.</summary>
    /// <param name="celsius">The freezing point, °C.</param>
    /// <param name="of">What has it.</param>
    /// <param name="lowest">The lowest it can be.</param>
    public static Estimate WithFreezing(Estimate celsius, Mix of, double lowest)
    {
        var error = IsFood(of) ? Freezing.FoodError : IsOneSolute(of) ? Freezing.Error : Freezing.MixtureError;
        bool tested = error.IsTested(celsius.Value) && Solubilities.HoldAll(of) && !Freezing.MayMeetEutectic(of.Grams, new Celsius(celsius.Low));
        return celsius.With(error.At(celsius.Value)).Within(lowest, 0).Tested(tested);
    }

    /// <summary>Share of solids that are not told apart in the whole, by mass.</summary>
    private static double Untold(Mix of)
    {
        double total = of.Total;
        return total > 0 ? (of.Of(Component.OtherDissolved) + of.Of(Component.Protein) + of.Of(Component.Fibre)) / total : 0;
    }

    private static bool IsPair(Mix of, Component with) => of.Total - of.Of(Component.Water) - of.Of(with) <= Trifle * of.Total;

    /// <summary>Whether it holds what grew, with minerals and small molecules that its entry does not list.</summary>
    private static bool IsFood(Mix of) =>
        of.Of(Component.Protein) + of.Of(Component.Fibre) + of.Of(Component.OtherInsoluble) > FoodShare.Value / 100 * of.Total;

    /// <summary>Whether nearly all that is dissolved is of one kind, so that the model has the error of a single solute.</summary>
    private static bool IsOneSolute(Mix of)
    {
        double hexoses = (of.Of(Component.Glucose) + of.Of(Component.Fructose) + of.Of(Component.Allulose)) / 180.16;
        double disaccharides = (of.Of(Component.Sucrose) + of.Of(Component.Maltose) + of.Of(Component.Lactose)) / 342.3;
        double salt = 2 * of.Of(Component.SodiumChloride) / 58.44, ethanol = of.Of(Component.Ethanol) / 46.07, glycerol = of.Of(Component.Glycerol) / 92.09;
        double others = 0;
        for (var c = Component.Sorbitol; c <= Components.LastSolute; c++)
        {
            // Ions and acids: about one particle to 60 g.
            if (c is not (Component.SodiumChloride or Component.Allulose)) others += of.Of(c) / 60;
        }

        others += of.Of(Component.OtherDissolved) / 342.3;
        double most = Math.Max(Math.Max(hexoses, disaccharides), Math.Max(salt, Math.Max(ethanol, glycerol)));
        return most >= OneKind.Value / 100 * (hexoses + disaccharides + salt + ethanol + glycerol + others);
    }
}
