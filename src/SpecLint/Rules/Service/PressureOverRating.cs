using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8022", "pressure-over-rating", "More pressure than the vessel is rated for, cold or warm", Level.Error,
    Needs = [Fact.Abv, Fact.Sugar], Safety = true)]
[Limit("warm-bottle", "Warm")]
internal sealed partial class PressureOverRating : PrepRule
{
    private const string Caution =
        "A vessel above its rating can burst and maim: use only vessels rated for the pressure, with a relief valve, and follow the "
            + "maker and local rules.";

    public override void Check(RecipeContext context, Prep prep)
    {
        var (pressure, span) = Pressures.Asked(prep);
        if (double.IsNaN(pressure)) NoPressure(context, prep);
        if (!(pressure > 0)) return;
        var (rating, source, mark) = RatingOf(context, prep);
        if (double.IsNaN(rating))
        {
            Open(context, prep, pressure, span);
            return;
        }

        var gas = Pressures.Of(context, prep, pressure) ?? Pressures.OfWater(prep, pressure);
        double warm = gas?.Gauge(gas.Volumes, Warm.Value) ?? double.NaN;

        // What lies above the model's last pressure is at least that, or what it is put under.
        bool beyond = double.IsNaN(warm), cold = pressure > rating;
        if (beyond) warm = Math.Max(pressure, Pressures.Highest);
        bool isOver = warm > rating;
        if (!cold && (prep.Keep!.Vessel.IsKeg || !(isOver || beyond))) return;
        string warmed = $"{(beyond ? "more than " : "")}{Say.With(warm, "bar")}";
        string rated = $"above the {Say.With(rating, "bar")} that its vessel is rated for ({source}).";
        context.Report(new(Rule)
        {
            Answer = cold || isOver ? Answer.Broken : Answer.NotShown,
            AskedLevel = !cold && (mark == Mark.Memory || !isOver) ? Level.Warning : null,
            At = Pressures.At(context, prep, span),
            Message = cold
                ? $"It is put under {Say.With(pressure, "bar")}, {rated}"
                : $"Put under {Say.With(pressure, "bar")} cold, it comes to {warmed} at {Say.Number(Warm.Value, 0)} °C, "
                    + (isOver ? rated : $"which is not shown to be within the {Say.With(rating, "bar")} of its vessel ({source})."),
            Advice = rating <= 0 ? "Use a vessel that is made and rated for pressure."
                : cold ? $"Stay below {Say.With(rating, "bar")}, or use a vessel with a higher rating."
                : "Lower the pressure, or use a vessel with a higher rating, and keep it cold.",
            Caution = Caution,
            Evidence =
            [
                Proof.Of("pressure", pressure, "bar"), Proof.Of("rating", rating, "bar", source),
                Proof.Of($"pressure at {Say.Number(Warm.Value, 0)} °C", warm, "bar"),
            ],
        });
    }

    /// <summary>What is carbonated and does not say at what pressure may be under more than its vessel holds.</summary>
    private static void NoPressure(RecipeContext context, Prep prep)
    {
        // A siphon and its chargers are made for each other.
        if (prep.Method.FirstOrDefault(static s => s.Verb.Carbonates) is not { } step || prep.Keep is { Vessel.IsSiphon: true }) return;
        var (rating, source, _) = RatingOf(context, prep);
        bool cannot = rating <= 0;
        context.Report(new(Rule)
        {
            Answer = cannot ? Answer.Broken : Answer.NotShown,
            AskedLevel = cannot ? null : Level.Warning,
            At = context.At(step.Do.Span, "target.pressure"),
            Key = "pressure",
            Message = cannot
                ? $"It is carbonated and kept in `{prep.Keep!.In.Value.Id}`, which is not made for any pressure ({source})."
                : "It is carbonated, and nothing says at what pressure: nothing shows that its vessel holds it.",
            Advice = cannot
                ? "Use a vessel that is made and rated for pressure."
                : "Write `pressure` under `target`, and the maker's `rating` under `keep`.",
            Caution = Caution,
            Evidence = [Proof.Of("step", step.Written)],
        });
    }

    /// <summary>A vessel of which nobody knows the rating is not shown to hold any pressure.</summary>
    private static void Open(RecipeContext context, Prep prep, double pressure, TextSpan span) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = Level.Warning,
            At = Pressures.At(context, prep, span),
            Key = "rating",
            Message = $"It is put under {Say.With(pressure, "bar")}, and nothing says what pressure its vessel is rated for.",
            Advice = "Write the maker's `rating` under `keep`, or once for the vessel in bar.json.",
            Caution = Caution,
            Evidence = [Proof.Of("pressure", pressure, "bar")],
        });

    private static (double Bar, string Source, Mark Mark) RatingOf(RecipeContext context, Prep prep)
    {
        if (prep.Keep is { Rating: { IsGiven: true, Value.Dimension: Dimension.Pressure } stated })
            return (stated.Value.Base, "keep.rating", Mark.House);
        if (prep.Keep is not { In.IsGiven: true } keep) return (double.NaN, "", Mark.House);
        if (context.Settings.Bar is { } bar
            && bar.Vessels.TryGetValue(keep.In.Value.Id, out var own)
            && own.Rating is { IsGiven: true, Value.Dimension: Dimension.Pressure })
            return (own.Rating.Value.Base, "bar.json", Mark.House);
        return keep.In.Value.Rated is { } type && !double.IsNaN(type.RatingBar)
            ? (type.RatingBar, $"{type.Name}: {type.Source}", type.Mark)
            : (double.NaN, "", Mark.House);
    }
}
