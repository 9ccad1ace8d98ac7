namespace SpecLint.Science;

/// <summary>
/// The plane that touches the charge balance and the ionic strength at their common solution, where no ions form pairs. What a change of the
/// composition leaves unbalanced there, divided by the slopes, is how far the solution moves.
/// </summary>
internal struct BalanceTangent
{
    private const double Small = 1e-6;

    private double lnH;
    private double strength;
    private double ph;
    private double balanceByLnH;
    private double balanceByStrength;
    private double gapByLnH;
    private double gapByStrength;

    /// <summary>Lays it at a solution; false where the slopes leave it open.</summary>
    public bool TryTouch(ReadOnlySpan<double> molal, AcidBase.Ions ions, Celsius t, double ph, double strength)
    {
        (this.ph, this.strength) = (ph, strength);
        lnH = -Electrolyte.Ln10 * (ph + (Electrolyte.HydrogenChloride * ions.Chloride)) - LnGamma(strength, ions, t);
        var step = Math.Max(Small * strength, 1e-9);
        var (balance, gap) = Left(molal, ions, t, lnH, strength);
        var (balanceX, gapX) = Left(molal, ions, t, lnH + Small, strength);
        var (balanceI, gapI) = Left(molal, ions, t, lnH, strength + step);
        (balanceByLnH, gapByLnH) = ((balanceX - balance) / Small, (gapX - gap) / Small);
        (balanceByStrength, gapByStrength) = ((balanceI - balance) / step, (gapI - gap) / step);
        return Determinant != 0 && !double.IsNaN(Determinant);
    }

    /// <summary>How far the pH moves to the composition near it.</summary>
    public readonly double Rise(ReadOnlySpan<double> molal, AcidBase.Ions ions, Celsius t)
    {
        var (balance, gap) = Left(molal, ions, t, lnH, strength);
        var byLnH = ((-balance * gapByStrength) + (gap * balanceByStrength)) / Determinant;
        var byStrength = ((-gap * balanceByLnH) + (balance * gapByLnH)) / Determinant;
        var x = lnH + byLnH;
        return -((x + LnGamma(strength + byStrength, ions, t)) / Electrolyte.Ln10) - (Electrolyte.HydrogenChloride * ions.Chloride) - ph;
    }

    private readonly double Determinant => (balanceByLnH * gapByStrength) - (balanceByStrength * gapByLnH);

    private static double LnGamma(double strength, AcidBase.Ions ions, Celsius t) =>
        -Electrolyte.Ln10 * Electrolyte.Slope(t.Value, ions.Ethanol) * Electrolyte.DebyeHuckel(strength);

    // What is left of the charge, and of the ionic strength less that which the constants were taken at.
    private static (double Balance, double Gap) Left(ReadOnlySpan<double> molal, AcidBase.Ions ions, Celsius t, double lnH, double strength)
    {
        var reference = t.Value == 20;
        var (u, v) = reference ? default : Electrolyte.Terms(t.Kelvin);
        var shift = Electrolyte.Shift(ions.Ethanol);
        var factor = shift == 0 ? 1 : Math.Exp(-Electrolyte.Ln10 * shift);
        var inverse = Math.Exp(-lnH);
        var first = Math.Exp(-2 * LnGamma(strength, ions, t)) * inverse;
        var raise = first / inverse;
        var hydroxide = Math.Exp(reference ? AcidBase.LnKw20 : Electrolyte.LnKw(t)) * factor * first;
        double charges = 0, squares = 0;
        for (var a = 0; a < AcidData.Count; a++)
        {
            if (!(molal[a] > 0))
                continue;
            double term = 1, sum = 1, charge = 0, square = 0, raised = first;
            for (var s = 0; s < AcidData.StepCount[a]; s++)
            {
                var i = (a * AcidData.MaxSteps) + s;
                term *= factor * AcidBase.Interaction(i, ions) * (reference ? AcidBase.Constants20[i] : Math.Exp(AcidBase.LnK(i, u, v))) * raised;
                raised *= raise;
                sum += term;
                charge += (s + 1) * term;
                square += (s + 1) * (s + 1) * term;
            }

            charges += molal[a] * charge / sum;
            squares += molal[a] * square / sum;
        }

        var h = 1 / inverse;
        return (h - hydroxide + ions.Strong - charges, ions.Inert + (0.5 * (h + hydroxide + squares)) - strength);
    }
}
