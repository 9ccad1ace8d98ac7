using CsCheck;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Properties of the charge balance over the whole box of compositions.</summary>
public sealed class AcidBasePropertyTests(ITestOutputHelper output)
{
    private static readonly Celsius Room = new(20);

    // Zero often, and masses over six decades: recipes, traces and nonsense.
    private static readonly Gen<double> Mass = Gen.Frequency(
        (5, Gen.Const(0.0)), (3, Gen.Double[-4, 3].Select(e => Math.Pow(10, e))), (2, Gen.Double[0, 50]));

    private static readonly Gen<double[]> Any = Gen.Select(Mass.Array[Components.Count], Gen.Double[0, 1000], (grams, water) =>
    {
        grams[(int)Component.Water] = water;
        return grams;
    });

    // A drink or a juice: mostly water, a little of each acid.
    private static readonly Gen<double[]> Drink = Gen.Select(
        Gen.Frequency((2, Gen.Const(0.0)), (1, Gen.Double[0, 30])).Array[(int)Components.LastAcid - (int)Components.FirstAcid + 1],
        Gen.Double[0, 100], Gen.Double[0, 300], Gen.Double[0, 4], Gen.Double[0, 5], Gen.Double[0, 6], (acids, ethanol, sugar, salt, potassium, gas) =>
        {
            var grams = Mixture.Of(
                (Component.Water, 700), (Component.Ethanol, ethanol), (Component.Sucrose, sugar), (Component.SodiumChloride, salt),
                (Component.Potassium, potassium), (Component.CarbonDioxide, gas));
            for (var a = 0; a < acids.Length; a++)
                grams[(int)Components.FirstAcid + a] = acids[a] / (1 + a % 3);
            return grams;
        });

    [Fact]
    public void Any_composition_gives_a_number_or_unknown()
    {
        int known = 0, backedOut = 0;
        Gen.Select(Any, Gen.Double[-5, 60]).Sample(
            (grams, t) =>
            {
                var ph = AcidBase.Ph(grams, new Celsius(t));
                var acidity = AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous);
                var potassium = Juice.PotassiumForPh(grams, new Ph(3), new Celsius(t));
                var juice = Juice.BackOut(grams, grams, new Ph(3), new Grams(8), TitrationBasis.CitricAnhydrous, Titration.JuiceEndPoint, new Celsius(t));
                if (ph is not null)
                    Interlocked.Increment(ref known);
                if (juice is not null)
                    Interlocked.Increment(ref backedOut);
                return (ph is null || ph.Value.Value is >= 0 and <= 14)
                    && acidity is { } a && double.IsFinite(a.Value)
                    && (potassium is null || double.IsFinite(potassium.Value.Value))
                    && (juice is null || (double.IsFinite(juice.Value.TotalAcid.Value) && double.IsFinite(juice.Value.Potassium.Value)));
            },
            iter: LongRun.Cases(100_000, 1_000_000));
        output.WriteLine($"{known} have a pH, {backedOut} can be backed out");
        Assert.True(known > 5_000 && backedOut > 100);
    }

    [Fact]
    public void Most_drinks_have_a_ph()
    {
        int known = 0, all = 0;
        Drink.Sample(
            grams =>
            {
                Interlocked.Increment(ref all);
                if (AcidBase.Ph(grams, Room) is not null)
                    Interlocked.Increment(ref known);
            },
            iter: 20_000);
        output.WriteLine($"{known} of {all}");
        Assert.True(known > 0.99 * all);
    }

    // Where ions form pairs, both are differences of balances that are solved to a few digits: good to a twentieth, which no range of a pH shows.
    private const double WithPairs = 0.05;

    // The first salt in water that holds none has a slope without end (Debye and Hückel's root): that much of a pH is never printed.
    private const double Unseen = 5e-5;

    // The implicit function theorem against solving the balance again; every tenth composition holds calcium, whose pairs are solved both ways.
    [Fact]
    public void Slopes_are_those_of_small_changes() =>
        Gen.Select(Drink, Gen.Int[0, Components.Count - 1], Gen.Int[0, 9]).Sample(
            (grams, moved, calcium) =>
            {
                if (calcium == 0)
                    grams[(int)Component.Calcium] = 0.5;

                // What holds next to no acid is buffered by nothing: its pH jumps.
                if (grams.AsSpan((int)Components.FirstAcid, Components.LastAcid - Components.FirstAcid + 1).ToArray().Sum() < 0.001 * grams.Sum())
                    return;
                Span<double> slopes = stackalloc double[Components.Count];
                var ph = AcidBase.PhWithSlopes(grams, Room, 1UL << moved, slopes);
                Assert.Equal(AcidBase.Ph(grams, Room)?.Value, ph?.Value);
                if (ph is null)
                    return;

                // A step that moves the pH much is no small change: water that nothing buffers needs a tiny one.
                double at = grams[moved], step = 1e-4 * grams.Sum(), change;
                do
                {
                    step /= 10;
                    grams[moved] = at + step;
                    if (AcidBase.Ph(grams, Room) is not { } above)
                        return;
                    change = above.Value - ph.Value.Value;
                }
                while (calcium != 0 && moved <= (int)Components.LastAcid && Math.Abs(change) > 0.002 && step > 1e-9);

                Assert.Equal(change, slopes[moved] * step, Unseen + ((calcium == 0 ? WithPairs : 0.01) * Math.Abs(change)));
            },
            iter: 20_000);

    [Fact]
    public void The_ph_falls_with_each_gram_of_acid() =>
        Gen.Select(Drink, Gen.Int[(int)Components.FirstAcid, (int)Components.LastAcid], Gen.Double[0.01, 5]).Sample(
            (grams, acid, more) =>
            {
                var before = AcidBase.Ph(grams, Room);
                grams[acid] += more;
                return before is null || AcidBase.Ph(grams, Room) is not { } after || after.Value < before.Value.Value + 1e-9;
            },
            iter: 200_000);

    [Fact]
    public void The_ph_rises_with_potassium() =>
        Gen.Select(Drink, Gen.Double[0.01, 5]).Sample(
            (grams, more) =>
            {
                var before = AcidBase.Ph(grams, Room);
                grams[(int)Component.Potassium] += more;
                return before is null || AcidBase.Ph(grams, Room) is not { } after || after.Value > before.Value.Value;
            },
            iter: 200_000);

    // Ethanol weakens acids: more of it in place of an equal mass of water leaves fewer hydrogen ions.
    [Fact]
    public void The_ph_rises_with_ethanol() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0, 10], Gen.Double[0, 1], Gen.Double[0, 300], Gen.Double[1, 50]).Sample(
            (citric, malic, potassium, ethanol, more) =>
            {
                Ph? At(double e) => AcidBase.Ph(
                    Mixture.Of(
                        (Component.Water, 800 - e), (Component.Ethanol, e), (Component.Citric, citric), (Component.Malic, malic),
                        (Component.Potassium, potassium)), Room);
                return At(ethanol + more)!.Value.Value > At(ethanol)!.Value.Value;
            },
            iter: 50_000);

    [Fact]
    public void Small_changes_make_small_changes() =>
        Gen.Select(Drink, Gen.Int[0, Components.Count - 1]).Sample(
            (grams, component) =>
            {
                // Water with next to no buffer turns on a trace, and so does an acid just neutralised: half a gram of acid, pH below 6.
                if (!(grams[(int)Component.Citric] + grams[(int)Component.Malic] + grams[(int)Component.Acetic] > 0.5))
                    return true;
                var before = AcidBase.Ph(grams, Room);
                grams[component] += 1e-6;
                return before is not { Value: < 6 } || AcidBase.Ph(grams, Room) is not { } after || Math.Abs(after.Value - before.Value.Value) < 1e-4;
            },
            iter: 200_000);

    [Fact]
    public void The_guess_does_not_matter() =>
        Gen.Select(Drink, Gen.Double[0, 14]).Sample(
            (grams, guess) =>
            {
                var (a, b) = (AcidBase.Ph(grams, Room), AcidBase.Ph(grams, Room, new Ph(guess)));
                return a.HasValue == b.HasValue && (a is null || Math.Abs(a.Value.Value - b!.Value.Value) < 1e-6);
            },
            iter: 100_000);

    [Fact]
    public void The_size_of_the_batch_does_not_matter() =>
        Gen.Select(Drink, Gen.Double[-3, 3]).Sample(
            (grams, decades) =>
            {
                var many = grams.Select(g => g * Math.Pow(10, decades)).ToArray();
                return (AcidBase.Ph(grams, Room), AcidBase.Ph(many, Room)) switch
                {
                    (null, null) => true,
                    ({ } a, { } b) => Math.Abs(a.Value - b.Value) < 1e-8,
                    _ => false,
                };
            },
            iter: 50_000);

    [Fact]
    public void Beyond_the_limits_the_answer_is_unknown()
    {
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Citric, 100), (Component.Water, 5)), Room)); // A powder.
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 40), (Component.Ethanol, 60)), Room));
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 80), (Component.SodiumChloride, 20)), Room)); // A saline of 20 %.
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 50), (Component.Citric, 50)), Room));
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 100)), new Celsius(-2)));
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 100)), new Celsius(double.NaN)));
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 100), (Component.Citric, -1)), Room));
        Assert.Null(AcidBase.Ph(Mixture.Of((Component.Water, 100), (Component.Citric, double.NaN)), Room));
        Assert.Null(AcidBase.Ph(new double[Components.Count], Room));
        Assert.Null(AcidBase.Ph(new double[3], Room));
        Assert.Equal(7.08, AcidBase.Ph(Mixture.Of((Component.Water, 100)), Room)!.Value.Value, 0.02);
    }

    [Fact]
    public void Undissociated_acid_is_half_at_the_pka()
    {
        var one = new MolesPerKilogramWater(1);
        var warm = new Celsius(25);
        Assert.Equal(0.5, AcidBase.Undissociated(Component.Acetic, one, new Ph(4.756), warm)!.Value.Value, 1e-9);
        Assert.Equal(1 / (1 + Math.Pow(10, 3.5 - 4.202)), AcidBase.Undissociated(Component.Benzoic, one, new Ph(3.5), warm)!.Value.Value, 1e-9);
        Assert.Null(AcidBase.Undissociated(Component.Sucrose, one, new Ph(3), warm));
        Assert.Equal(0.1, AcidBase.Molality(Mixture.Of((Component.Water, 500), (Component.Sodium, 1.1495)), Component.Sodium)!.Value.Value, 1e-9);
    }

    [Fact]
    public void Ph_allocates_nothing()
    {
        var sour = Mixture.Of(
            (Component.Water, 100), (Component.Ethanol, 18), (Component.Sucrose, 15), (Component.Citric, 1.5), (Component.Malic, 0.3), (Component.Ascorbic, 0.01),
            (Component.Phosphoric, 0.01), (Component.Potassium, 0.04), (Component.SodiumChloride, 0.1));
        for (var i = 0; i < 50_000; i++)
            AcidBase.Ph(sour, Room);
        var bytes = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 5_000; i++)
            AcidBase.Ph(sour, Room);
        Assert.Equal(bytes, GC.GetAllocatedBytesForCurrentThread());
    }
}
