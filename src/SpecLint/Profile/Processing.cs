using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Second room: what is done to the parts of a preparation, as far as it moves their composition.</summary>
internal static class Processing
{
    /// <summary>Whether a preparation ferments.</summary>
    public static bool Ferments(Prep prep) => prep.Family.OrNone().Ferments || Techniques.Has(prep, static v => v.Ferments);

    /// <summary>The parts after washing, boiling down, drying and fermenting.</summary>
    public static Composed Of(Prep prep, Composed weighed)
    {
        var made = BoilAndDry(prep, Clear(prep, weighed));
        return Ferments(prep)
            ? made with
            {
                Lack = made.Lack.And(
                Unknowns.Strength | Unknowns.Sugar | Unknowns.Acid | Unknowns.Ph, "a ferment turns sugar into ethanol and acid: measure it")
            }
            : made;
    }

    /// <summary>The yield in grams; NaN where it is not given or cannot be turned into mass.</summary>
    public static double YieldMass(Prep prep, Mix mix)
    {
        if (!prep.Yield.IsGiven) return double.NaN;
        var yield = prep.Yield.Value;
        if (yield.Dimension == Dimension.Mass) return yield.Base;
        if (yield.Dimension != Dimension.Volume) return double.NaN;

        // Of a volume that has lost water: the mass follows from what stays and the density it then has.
        double low = 0, high = mix.Of(Component.Water);
        for (int i = 0; i < 40; i++)
        {
            double loss = (low + high) / 2;
            var trial = mix.Copy();
            trial.Remove(Component.Water, loss);
            var volume = Mixture.Volume(trial.Grams, Celsius.Reference);
            if (volume is null || volume.Value.Value < yield.Base) high = loss;
            else low = loss;
        }

        return mix.Total - low;
    }

    private static Composed Clear(Prep prep, Composed weighed)
    {
        var family = prep.Family.OrNone();
        if (!family.TakesFatOut) return weighed;
        var mix = weighed.Mix.Copy();
        mix.Keep(Component.Fat, 0);
        if (family.TakesProteinOut)
        {
            mix.Keep(Component.Protein, 0);
            mix.Keep(Component.OtherInsoluble, 0);
            mix.Keep(Component.Fibre, 0);
        }

        return weighed with { Mix = mix };
    }

    /// <summary>Whether there is ethanol to drive off.</summary>
    private static bool HoldsSpirit(Mix mix) => mix.Of(Component.Ethanol) > 0.005 * mix.Total;

    private static Composed BoilAndDry(Prep prep, Composed of)
    {
        bool boils = Techniques.Has(prep, static v => v.BoilsDown), dries = Techniques.Has(prep, static v => v.Dries);
        if (!boils && !dries) return of;
        double made = YieldMass(prep, of.Mix);
        if (double.IsNaN(made))
        {
            return of with
            {
                Lack = of.Lack.And(HoldsSpirit(of.Mix) ? Unknowns.Water | Unknowns.Strength : Unknowns.Water, dries
                    ? "how much water drying left is not known: the yield is not given by mass"
                    : "how much water boiled off is not known: the yield is not given"),
            };
        }


        // As much as went in, but for rounding, has lost nothing.
        if (made >= of.Mix.Total * (1 - 1e-9)) return of;
        var lack = HoldsSpirit(of.Mix) ? of.Lack.And(Unknowns.Strength, "how much ethanol the heat drove off is not known") : of.Lack;
        var left = of.Mix.Copy();
        left.Remove(Component.Water, of.Mix.Total - made);
        return new Composed(left, lack);
    }
}
