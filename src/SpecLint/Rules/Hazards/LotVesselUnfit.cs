using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Keeping;
using SpecLint.Rules.Service;

namespace SpecLint.Rules.Hazards;

[Rule("SL6031", "lot-vessel-unfit", "A lot stands in a vessel that it dissolves, or that it may burst", Level.Error, Safety = true,
    Needs = [Fact.Ph, Fact.Acid, Fact.Abv, Fact.Sugar])]
[Limit("copper-ph", "Copper")]
[Limit("galvanised-ph", "Zinc")]
[Limit("aluminium-ph", "Aluminium")]
internal sealed partial class LotVesselUnfit : LotRule
{
    private static readonly PrepRule[] OfPressure = [new PressureOverRating(), new FermentSealed()];

    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.In.IsGiven || !lot.Item.IsGiven) return;
        InMetal(context, lot);
        if (Lots.PrepOf(context, lot) is { } prep) UnderPressure(context, lot, prep);
    }

    private static void InMetal(FileContext context, Lot lot)
    {
        var vessel = lot.In.Value;

        // What may hold lead is SL6027's.
        var (limit, metal) = MetalWithAcid.MetalOf(vessel, stored: true);
        if (limit is null || (limit != Copper && limit != Zinc && limit != Aluminium) || AcidityOf(context, lot) is not { } acidity) return;

        // A maker's can or keg is lacquered inside.
        if (limit == Aluminium && (vessel.IsKeg || vessel.HoldsNoAir) && Lots.PrepOf(context, lot) is null) return;
        bool carbonic = vessel.IsCopper && Lots.PrepOf(context, lot) is { } prep && MetalWithAcid.IsCarbonated(prep);
        if (!carbonic && acidity.Low >= limit.Value) return;
        bool broken = vessel.IsBare && (carbonic || acidity.High < limit.Value), law = limit.AppliesIn(context.Settings);
        string is1 = carbonic ? "is carbonated, so it is acid" : acidity.IsKnown ? $"has pH {Say.Ph(acidity)}" : "has no known pH";
        Report(
            context, lot, (broken && law ? limit.LevelCap : Level.Warning, broken ? Answer.Broken : Answer.NotShown),
            ($"It {is1}, and the vessel is of {metal}{(vessel.IsBare ? "" : ", which nothing says is lined")}. Below pH "
                + $"{Say.Number(limit.Value)} the metal dissolves into it ({limit.Source}{(law ? "" : ", the yardstick here")}).",
            $"{(broken ? "Discard it, and keep the next" : "Keep it")} in steel, glass or a lined vessel. If the vessel is lined, write "
                + "`lined` in its words.",
            HazardWords.Caution), [Proof.Of(Fact.Ph, acidity), Proof.Of(limit)]);
    }

    /// <summary>The pH of a lot: as measured, as its recipe comes to, as its entry says; none where it is dry or holds no acid.</summary>
    private static FactValue? AcidityOf(FileContext context, Lot lot)
    {
        if (lot.Measured is { Ph.IsGiven: true } read)
        {
            double off = Meters.PhHalfWidth(read, context.Book);
            var ph = read.Ph.Value;
            return new FactValue(ph.Base, ph.BaseLow - off, ph.BaseHigh + off, "measured", null);
        }

        if (Lots.PrepOf(context, lot) is { } prep)
        {
            var profile = context.Profiles.Of(prep);
            if (profile.IsSolid) return null;
            var ph = profile.Get(Fact.Ph);
            return ph.IsKnown || profile.Get(Fact.Acid) is not { IsKnown: true, Low: <= 0 } ? ph : null;
        }

        if (context.Profiles.MaterialOf(lot.Item.Value) is not { State: MaterialState.Liquid } material) return null;
        if (!double.IsNaN(material.Ph.Typical)) return new FactValue(material.Ph.Typical, material.Ph.Low, material.Ph.High, "its entry", null);
        return material.Kind.IsAcidFree || material.Kind.IsWater || material.Kind.IsFat ? null : FactValue.Open("its pH is not known");
    }

    /// <summary>What the rules about pressure say of the recipe if it is kept as the lot stands, and not of it as it is written.</summary>
    private static void UnderPressure(FileContext context, Lot lot, Prep prep)
    {
        var keep = prep.Keep;
        if (keep is { In.IsGiven: true } && string.Equals(keep.In.Value.Id, lot.In.Value.Id, StringComparison.OrdinalIgnoreCase)) return;
        var stands = prep.KeptAs(new() { In = lot.In, At = lot.At.IsGiven ? lot.At : keep?.At ?? default, For = keep?.For ?? default });
        var profile = context.Profiles.Of(prep);
        foreach (var rule in OfPressure)
        {
            if (rule is FermentSealed && !lot.In.Value.IsClosed) continue;
            List<Finding> now = [], before = [];
            rule.Check(new RecipeContext(context.Book, context.Profiles, now, stands, profile), stands);
            if (now.Count == 0) continue;
            rule.Check(new RecipeContext(context.Book, context.Profiles, before, prep, profile), prep);

            // What nobody knows of the recipe is asked there; what is shown to fail is told of the lot as well.
            if (before.Count > 0 && now[0].Answer != Answer.Broken) continue;
            var found = now[0];
            Report(context, lot, (found.AskedLevel, found.Answer), (found.Message, found.Advice, found.Caution), found.Evidence, prep);
        }
    }

    private static void Report(
        FileContext context, Lot lot, (Level? Level, Answer Answer) says, (string Message, string? Advice, string? Caution) text,
        IReadOnlyList<Evidence> evidence, Prep? prep = null) => context.Report(new(Rule)
        {
            Answer = says.Answer,
            AskedLevel = says.Level,
            At = context.At(lot.In.Span, Lots.PathOf(lot, "in")),
            Key = Lots.KeyOf(lot),
            Message = $"The lot of `{lot.Item.Value}` stands in \"{lot.In.Value.Id}\". {text.Message}",
            Advice = text.Advice ?? "",
            Caution = text.Caution,
            Evidence = evidence,
            Related = prep is null ? [] : [new RelatedPlace(prep.Head, "its recipe")],
        });
}
