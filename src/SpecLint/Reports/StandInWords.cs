using SpecLint.Profile;

namespace SpecLint.Reports;

/// <summary>Says whether one thing goes for another, and by how much each figure differs, also where it does.</summary>
internal static class StandInWords
{
    /// <summary>E.g. <c>like lime-juice: yes; acid +5 % (6.3 g/100 mL against 6), pH 2.0 against 2.2, sugar −0.4 g/100 mL</c>.</summary>
    public static string Of(StandIn pair)
    {
        double acid = 100 * ((pair.Acid.Value / pair.ModelAcid) - 1);
        var figures = new List<string> { $"acid {Signed(acid, 0)} % ({Say.With(pair.Acid.Value, "g/100 mL")} against "
            + $"{Say.Number(pair.ModelAcid)}){Over(pair.TotalHolds)}" };
        if (Math.Abs(pair.Shares.Here - pair.Shares.There) >= 1)
            figures.Add($"{StandIn.AcidName(pair.Furthest)} {Say.Number(pair.Shares.Here, 0)} % of the acids against "
                + $"{Say.Number(pair.Shares.There, 0)} %{Over(pair.SharesHold)}");
        figures.Add($"sugar {Signed(pair.Sugar.Here - pair.Sugar.There, 1)} g/100 mL{Over(pair.SugarHolds)}");
        if (!pair.SaltHolds) figures.Add($"salt {Signed(pair.Salt.Here - pair.Salt.There, 1)} g/100 mL{Over(false)}");
        if (pair.Ph.IsKnown && !double.IsNaN(pair.Model.Ph.Typical))
            figures.Add($"pH {Say.Number(pair.Ph.Value, 1)} against {Say.Number(pair.Model.Ph.Typical, 1)}{Over(pair.PhHolds)}");
        return $"like {pair.Name}: {(pair.Holds ? "yes" : "no")}; {string.Join(", ", figures)}";
    }

    private static string Over(bool holds) => holds ? "" : " (too far)";

    private static string Signed(double difference, int decimals)
    {
        string number = Say.Number(Math.Abs(difference), decimals);
        return number == "0" ? "±0" : (difference > 0 ? "+" : "−") + number;
    }
}
