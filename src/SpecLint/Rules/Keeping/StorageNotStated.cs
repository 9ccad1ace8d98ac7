using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5006", "storage-not-stated", "Nothing says how long or how cold food that needs cold is kept", Level.Warning, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity, Fact.Life])]
[Limit("food-code-date-mark", "Mark")]
[Limit("food-code-cold-hold", "Cold")]
[Limit("food-code-time-control", "Hours")]
internal sealed partial class StorageNotStated : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        bool time = !double.IsNaN(Storage.Days(prep)), temperature = !double.IsNaN(Storage.Celsius(prep, context.Settings));
        var state = context.Profile.Keeping!;

        // A solid is asked where it is no dry good: moist, and not sour.
        if ((time && temperature) || (state.StaysDry && !state.IsLowAcid)) return;
        if (!state.HoldsPerishable || state.Verdict == KeepingVerdict.NotControlled)
        {
            if (!time && !IsAsked(context, prep)) Undated(context, prep);
            return;
        }

        // What is gone within hours needs no storage temperature.
        if (time && Storage.Days(prep) * 24 <= Hours.Value) return;

        // Sealed and not sour it is an error in the room, so it is where nothing says that it is cold.
        bool mayBotulise = !temperature && Storage.IsSealed(prep) && !state.IsSour && Storage.MayOutlast(prep, SpecialCases.MarkedFromDays);
        bool soft = state.IsStrong
            && temperature
            && !Perishables.IsListed(state.What)
            && (state.What != Perishable.NutOrPulse || state.IsSour);
        string missing = time ? "how cold" : temperature ? "how long" : "how long or how cold";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = mayBotulise ? Level.Error : soft ? Level.Note : null,
            At = At(context, prep, time ? "keep.at" : temperature ? "keep.for" : "keep"),
            Message = $"Nothing says {missing} it is kept, and {KeepingWords.Because(state)} ({Mark.Source}).",
            Advice = $"Write `keep` with a storage temperature of {KeepingWords.Degrees(Cold.Value)} or colder and a time of at most "
                + $"{KeepingWords.Days(Mark.Value)}, counting the day it is made.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(Mark), Proof.Of(Cold)],
        });
    }

    /// <summary>A bar that asks every preparation for `keep` is told by that rule.</summary>
    private static bool IsAsked(RecipeContext context, Prep prep) =>
        prep.Keep is null && context.Settings.Bar is { } bar && bar.Asks.Any(static a => a.IsGiven && a.Value == "keep");

    private static Reading.Spot At(RecipeContext context, Prep prep, string path) =>
        new(prep.Keep is { } keep ? context.At(keep.Span) : context.File.Head, path);

    /// <summary>What needs no cold still has an end, and a label to bear it.</summary>
    private static void Undated(RecipeContext context, Prep prep) =>
        context.Report(new(Rule)
        {
            AskedLevel = Level.Note,
            At = At(context, prep, "keep.for"),
            Message = "Nothing says how long it is kept, so its label has no use-by day and nobody can tell an old bottle from a new "
                + "one (common practice, no source).",
            Advice = "Write `keep` with a storage temperature, a container and a time (one day if it is made for the shift).",
            Evidence = [Proof.Of(Fact.Life, context.Fact(Fact.Life))],
        });
}
