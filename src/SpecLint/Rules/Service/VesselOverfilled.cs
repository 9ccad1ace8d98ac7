using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8021", "vessel-overfilled", "More in the vessel than it holds, or no room left under gas or ice", Level.Error,
    Safety = true, IsConsequence = true)]
[Limit("headspace-least", "Room")]
[Limit("headspace-ice", "IceRoom")]
[Limit("mostly-ice-from", "MostlyIce")]
[Limit("yield-tolerance", "Off")]
[Limit("bottle-share", "Share")]
internal sealed partial class VesselOverfilled : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Keep is not { } keep) return;
        var (capacity, place) = CapacityOf(context, prep, keep);
        if (!(capacity > 0)) return;
        double volume = Yields.Volume(context, prep);
        if (double.IsNaN(volume)) return;
        double bottles = Bottles(prep, capacity, volume);
        volume /= bottles;
        bool mayFreeze = double.IsNaN(Storage.Celsius(prep, context.Settings));
        bool swells = mayFreeze
            || keep is { At: { IsGiven: true, Value.Base: < 0 } } or { Gas.IsGiven: true }
            || prep.Family.OrNone().Swells
            || prep.Target is { Pressure.IsGiven: true };
        var room = FreezesSolid(context, keep) ? IceRoom : Room;
        double most = swells ? capacity * (1 - (room.Value / 100)) : capacity;
        if (volume <= most * (swells && volume <= capacity ? 1 : 1 + (Off.Value / 100))) return;
        bool over = volume > capacity;
        context.Report(new(Rule)
        {
            AskedLevel = over ? null : Level.Warning,
            Place = place.File == prep.Source ? place : context.At(keep.Span),
            Path = "keep.capacity",
            Message = over
                ? $"{Say.With(volume, "mL")} is {(bottles > 1 ? "filled into each" : "made")}, but the vessel only holds {Say.With(capacity, "mL")}."
                : $"{Say.With(volume, "mL")} in a vessel of {Say.With(capacity, "mL")} leaves "
                    + $"{Say.Number(100 * (1 - (volume / capacity)), 1)} % headspace, below the {Say.With(room.Value, "%")} that "
                    + $"{(room == IceRoom ? "freezing to ice" : "gas or ice")} "
                    + $"needs{(mayFreeze ? ", and nothing says how cold it is kept" : "")} ({room.Source}).",
            Advice = $"Fill at most {Say.With(Math.Floor(capacity * (1 - ((swells ? room.Value : 0) / 100))), "mL")} into it, or split "
                + $"the batch into {Say.Number(Math.Ceiling(bottles * volume / most), 0)} vessels"
                + (bottles > 1 ? "." : " and write how many, and how much each holds, under `portions`."),
            Caution = swells
                ? "A full vessel that freezes, ferments or is under gas can burst. Leave headspace and follow its maker's rating."
                : null,
            Evidence = [Proof.Of("made", volume, "mL"), Proof.Of("capacity", capacity, "mL"), Proof.Of(room)],
            Related = place.File == prep.Source ? [] : [new RelatedPlace(place, "the vessel")],
        });
    }

    /// <summary>
    /// Number of vessels that it is filled into: one for each portion, where a portion fills a good part of a vessel and all do not fit into
    /// one. The capacity is that of each.
    /// </summary>
    private static double Bottles(Prep prep, double capacity, double volume)
    {
        if (!prep.PortionCount.IsGiven || prep.PortionCount.Value <= 1 || volume <= capacity) return 1;
        double each = prep.PortionSize is { IsGiven: true, Value.Dimension: Dimension.Volume } size ? size.Value.Base : volume / prep.PortionCount.Value;
        return each < capacity * Share.Value / 100 ? 1 : each >= capacity ? 1 : volume / each;
    }

    /// <summary>Whether most of it turns to ice where it is kept: ice takes up a ninth more room than the water it comes from.</summary>
    private static bool FreezesSolid(RecipeContext context, SpecLint.Book.Keeping keep) =>
        keep.At is { IsGiven: true, Value: { Dimension: Dimension.Temperature, Base: < 0 and var celsius } }
        && (Freezing.IceFraction(context.Profile.Grams, new Celsius(celsius)) is not { } ice || 100 * ice.Value > MostlyIce.Value);

    private static (double Millilitres, Place Place) CapacityOf(RecipeContext context, Prep prep, SpecLint.Book.Keeping keep)
    {
        if (keep.Capacity is { IsGiven: true, Value.Dimension: Dimension.Volume })
            return (keep.Capacity.Value.Base, prep.At(keep.Capacity.Span));
        if (keep.In.IsGiven
            && context.Settings.Bar is { } bar
            && bar.Vessels.TryGetValue(keep.In.Value.Id, out var vessel)
            && vessel.Capacity is { IsGiven: true, Value.Dimension: Dimension.Volume })
            return (vessel.Capacity.Value.Base, bar.At(vessel.Capacity.Span));
        return (double.NaN, default);
    }
}
