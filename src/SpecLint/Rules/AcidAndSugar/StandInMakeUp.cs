using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Amounts;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4021", "stand-in-make-up", "A stand-in made up of other acids, sugar or salt than what it stands in for", Level.Warning,
    Needs = [Fact.Acid, Fact.Ph], IsConsequence = true)]
[Limit("stands-in-acid-share")]
[Limit("stands-in-sugar")]
[Limit("stands-in-salt")]
[Limit("stands-in-ph")]
internal sealed partial class StandInMakeUp : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (StandIn.Of(context.Profile, context.Profiles) is not { } pair || pair.ModelAcid <= Guards.LeastModelAcid) return;
        var faults = new List<string>();
        var proofs = new List<Evidence> { Proof.Of(Fact.Acid, pair.Acid), Proof.Of($"acid of {pair.Name}", pair.ModelAcid, "g/dL") };
        if (!pair.SharesHold)
        {
            string acid = StandIn.AcidName(pair.Furthest);
            faults.Add($"{acid} is {Say.Number(pair.Shares.Here, 0)} % of its acids but {Say.Number(pair.Shares.There, 0)} % in "
                + $"{pair.Name}, more than the {Say.Number(StandIn.Share.Value, 0)} points within which they taste alike");
            proofs.Add(Proof.Of($"{acid}, of all acids", pair.Shares.Here, "%"));
            proofs.Add(Proof.Of(StandIn.Share));
        }

        if (!pair.SugarHolds) Differs(faults, proofs, "sugar", pair.Sugar, StandIn.Sweet);
        if (!pair.SaltHolds) Differs(faults, proofs, "salt", pair.Salt, StandIn.Salty);
        if (!pair.PhHolds)
        {
            faults.Add($"its pH is {Say.Ph(pair.Ph)} against {Say.Number(pair.Model.Ph.Typical, 2)}, over "
                + $"{Say.Number(StandIn.Sourness.Value)} apart");
            proofs.Add(Proof.Of(Fact.Ph, pair.Ph));
            proofs.Add(Proof.Of(StandIn.Sourness));
        }

        if (faults.Count == 0) return;
        var (advice, edits) = pair.SharesHold ? ("", []) : Solve(context, pair);
        var standsIn = prep.Target!.StandsInFor;
        context.Report(new(Rule)
        {
            At = context.At(standsIn.Span, "target.standsInFor"),
            Message = $"It stands in for {pair.Name}, but {Say.List(faults)} ({StandIn.Share.Source}).",
            Advice = advice.Length > 0 ? $"Take {advice}."
                : pair.SharesHold ? "Change what causes the difference, or say in the recipe how to make up for it in a drink."
                : $"Make it from the acids of {pair.Name}.",
            Evidence = proofs,
            Corrections = Correction.Propose($"Take {advice}.", edits),
        });
    }

    private static void Differs(List<string> faults, List<Evidence> proofs, string what, (double Here, double There) pair, Limit limit)
    {
        faults.Add($"it has {Say.With(pair.Here, "g/100 mL")} of {what} against {Say.With(pair.There, "g/100 mL")}, over "
            + $"{Say.With(limit.Value, "g")} {(pair.Here > pair.There ? "more" : "less")}");
        proofs.Add(Proof.Of(what, pair.Here, "g/dL"));
        proofs.Add(Proof.Of(limit));
    }

    /// <summary>
    /// Two amounts that were swapped, where swapping them back holds; else the acids in grams that the volume of the batch
    /// needs over what its juices bring. A line of an acid that is not wanted becomes one of the acid that is missing.
    /// </summary>
    private static (string Words, IReadOnlyList<TextEdit> Edits) Solve(RecipeContext context, StandIn pair)
    {
        var lines = AcidLines(context.Profile);
        if (lines.Count == 0) return ("", []);
        double volume = Solving.VolumeOf(context.Profile.Grams), density = Solving.VolumeOf(pair.Model.PerGram);
        if (double.IsNaN(volume) || double.IsNaN(density) || density <= 0) return ("", []);
        if (lines.Count == 2 && SwapHolds(context.Profile, lines, pair))
        {
            Line a = lines[0].Part.Line, b = lines[1].Part.Line;
            string swapped = $"{Written.Text(context, b.Amount.Span)} of {a.Item.Or("it")} and {Written.Text(context, a.Amount.Span)} of "
                + b.Item.Or("it");
            return ($"{swapped}: the two amounts look swapped", Written.Exchange(context, a, b));
        }

        var words = new List<string>();
        var edits = new List<TextEdit>();
        bool whole = true;
        var missing = Missing(context.Profile, pair, lines, volume / density);
        var replaced = lines[0].Part;
        foreach (var (part, _) in lines)
        {
            if (part.Grams.Typical > replaced.Grams.Typical) replaced = part;
        }

        foreach (var (part, acid) in lines)
        {
            double native = context.Profile.Grams[(int)acid];
            foreach (var (other, same) in lines)
            {
                if (same == acid) native -= other.Grams.Typical * other.Material!.Of(acid);
            }

            double needed = (pair.Model.Of(acid) / density * volume) - native;
            var line = part.Line;
            var amount = line.Amount.Value;
            if (ReferenceEquals(part, replaced) && missing.Item is { } item)
            {
                string grams = Rounding.Words(Rounding.ToStep(missing.Grams, amount, context.Settings), amount);
                words.Add($"{grams} of {item} instead of {line.Item.Or("it")}");
                edits.Add(context.Rewrite(line.Item.Span, item));
                edits.Add(context.Rewrite(line.Amount.Span, grams));
            }
            else if (needed <= 0)
            {
                words.Add($"no {line.Item.Or("more of it")}");
                whole = false;
            }
            else
            {
                double rounded = Rounding.ToStep(
                    amount.Base * needed / (part.Grams.Typical * part.Material!.Of(acid)), amount, context.Settings);
                words.Add($"{Rounding.Words(rounded, amount)} of {line.Item.Or("it")}");
                edits.Add(context.Rewrite(line.Amount.Span, Rounding.Words(rounded, amount)));
            }
        }

        return (Say.List(words), whole ? edits : []);
    }

    private static List<(Part Part, Component Acid)> AcidLines(RecipeProfile profile)
    {
        var lines = new List<(Part, Component)>();
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix
                || !part.IsWeighed
                || part.Grams.Typical <= 0
                || !part.Line.Amount.IsGiven
                || !Substances.IsAcid(part.Material))
                continue;
            var most = MainAcid(part.Material!);
            if (part.Material!.Of(most) > 0) lines.Add((part, most));
        }

        return lines;
    }

    private static Component MainAcid(Material material)
    {
        var most = Components.FirstAcid;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            if (material.Of(c) > material.Of(most)) most = c;
        }

        return most;
    }

    private static bool SwapHolds(RecipeProfile profile, List<(Part Part, Component Acid)> lines, StandIn pair)
    {
        var (a, b) = (lines[0], lines[1]);
        if (a.Acid == b.Acid || a.Part.Line.Amount.Value.Dimension != b.Part.Line.Amount.Value.Dimension) return false;
        double all = Solving.AcidsOf(profile.Grams), model = Solving.AcidsOf(pair.Model.PerGram);
        double moved = b.Part.Grams.Typical - a.Part.Grams.Typical;
        double first = 100 * (profile.Grams[(int)a.Acid] + moved) / all, second = 100 * (profile.Grams[(int)b.Acid] - moved) / all;
        return Math.Abs(first - (100 * pair.Model.Of(a.Acid) / model)) <= StandIn.Share.Value
            && Math.Abs(second - (100 * pair.Model.Of(b.Acid) / model)) <= StandIn.Share.Value;
    }

    /// <summary>
    /// The main acid of the model that no line brings, with the grams needed; no item where there is none in the catalogue.
    /// </summary>
    private static (string? Item, double Grams) Missing(
        RecipeProfile profile, StandIn pair, List<(Part Part, Component Acid)> lines, double scale)
    {
        var main = MainAcid(pair.Model);
        if (lines.Exists(line => line.Acid == main)) return (null, 0);
        string item = StandIn.AcidName(main).Replace(' ', '-');
        double needed = (pair.Model.Of(main) * scale) - profile.Grams[(int)main];
        return needed > 0 && BuiltInCatalogue.Find(item) is not null ? (item, needed) : (null, 0);
    }
}
