using System.Text;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Service;
using SpecLint.Science;
using SpecLint.Service;

namespace SpecLint.Changes;

/// <summary>
/// Adjusts the amounts of a recipe to targets, in the steps of the bar's tools. What it proposes is written into the recipe's text and
/// worked out anew, so that every figure shown is that of the changed recipe and not of the search. It works on texts alone; writing
/// them is left to the caller.
/// </summary>
internal sealed class Adjuster
{
    /// <summary>How often the search is told how far its figures are from those of the recipe, worked out anew.</summary>
    private const int Rounds = 3;

    private static readonly Limit Strength = Limits.Of("adjust-strength");
    private static readonly Limit Sugar = Limits.Of("adjust-sugar");
    private static readonly Limit Acid = Limits.Of("adjust-acid");
    private static readonly Limit Share = Limits.Of("adjust-share");
    private static readonly Limit Volume = Limits.Of("adjust-volume");
    private static readonly Limit ModelAcid = Limits.Of("adjust-model-acid");
    private static readonly Limit GlassLeast = Limits.Of("glass-underfilled");

    private readonly BookInput input;
    private readonly CheckResult before;
    private readonly Recipe recipe;
    private readonly AdjustRequest request;
    private readonly List<string> remarks = [];
    private SourceFile file;
    private ProfileSet profiles;
    private RecipeProfile profile;

    private Adjuster(BookInput input, CheckResult before, Recipe recipe, AdjustRequest request)
    {
        this.input = input;
        this.before = before;
        this.recipe = recipe;
        this.request = request;
        file = recipe.Source;
        profiles = before.Profiles;
        profile = profiles.Of(recipe);
    }

    private Settings Settings => before.Book.Settings;

    private Recipe Current => profile.Recipe;

    /// <summary>Adjusts a recipe.</summary>
    /// <param name="input">The book.</param>
    /// <param name="before">What its check comes to.</param>
    /// <param name="recipe">The recipe, of that check.</param>
    /// <param name="request">What it is to come to.</param>
    /// <param name="why">Why it cannot be tried, in words; empty where it can.</param>
    /// <returns>What comes nearest, or <see langword="null"/>.</returns>
    public static Adjustment? Of(BookInput input, CheckResult before, Recipe recipe, AdjustRequest request, out string why)
    {
        var run = new Adjuster(input, before, recipe, request);
        why = run.WhyNot();
        return why.Length > 0 ? null : run.Adjust();
    }

    private string WhyNot()
    {
        if (request.Targets.Count == 0 && request.Like.Length == 0
            && request.Glass.Length == 0 && request.Without.Length == 0) return "there is no target";
        if ((profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) != 0) return profile.UnknownBecause;
        foreach (string id in request.Keep)
        {
            if (!profile.Parts.Any(p => p.Line.Item.Or("") == id)) return $"{id} is not a line of it";
        }

        foreach (string id in request.Add)
        {
            if (profiles.MaterialOf(id) is not { } added || (added.Unknown & Unknowns.Composition) != 0) return $"what {id} is made of is not known";
            if (profile.Parts.Any(p => p.Line.Item.Or("") == id)) return $"{id} is a line of it already";
        }

        if (request.Like.Length > 0)
        {
            if (recipe is not Prep) return "a drink is not like an ingredient: --like is for preparations";
            if (StandIn.Of(profile, profiles, request.Like) is null)
                return $"it cannot be compared with {request.Like}: what one of the two is made of is not known, or it is a solid";
        }

        if (request.Glass.Length > 0 && (recipe is not Drink drink || GlassFill.Of(profile, drink, request.Glass, Settings) is null))
            return $"{request.Glass} is not a glass of bar.json or of the usual kinds, or it is no drink";
        if (request.Without.Length > 0)
        {
            if (!profile.Parts.Any(p => p.Line.Item.Or("") == request.Without)) return $"{request.Without} is not a line of it";
            if (profiles.MaterialOf(request.Use) is null) return $"{request.Use} is neither in the book nor in the catalogue";
        }

        return "";
    }

    private Adjustment Adjust()
    {
        var atFirst = profile;
        if (request.Without.Length > 0) Replace(Swapped());
        var lines = LinesOf();
        var targets = TargetsOf(atFirst);
        var search = new AmountSearch(profile, lines, Settings) { Scale = ScaleOf(targets) };
        var kept = KeptOf(atFirst, targets);
        var shifts = new double[targets.Count];
        double[] amounts = search.Now, exact = amounts;
        var start = (File: file, Set: profiles, Profile: profile);
        var goals = targets;
        double furthest = double.PositiveInfinity;
        SourceFile? best = null;
        for (int round = 0; round < Rounds; round++)
        {
            List<Wanted> shifted = [.. targets.Select((t, i) =>
                t with { Goal = t.Goal with { Low = t.Goal.Low - shifts[i], High = t.Goal.High - shifts[i] } })];
            var asked = shifted.ConvertAll(g => g.Goal);
            double[] tried = search.Solve(asked, kept);
            (file, profiles, profile) = start;
            if (!IsSame(tried, search.Now) || SetsGlass) Replace(Written(lines, tried));
            double off = 0;
            bool isSettled = true;
            for (int i = 0; i < shifts.Length; i++)
            {
                // What the recipe comes to over what the search had it come to: dilution, evaporation, a reading that no longer counts.
                double real = targets[i].Real(profile), shift = real - search.Value(targets[i].Goal.Measure, tried);
                off += AmountSearch.CostOf(targets[i].Goal, real);
                if (double.IsNaN(shift)) continue;
                isSettled &= Math.Abs(shift - shifts[i]) < 0.1 * targets[i].Goal.Tolerance;
                shifts[i] = shift;
            }

            if (best is null || off < furthest) (best, furthest, amounts, exact, goals) = (file, off, tried, search.Exact(asked, kept), shifted);
            if (isSettled) break;
        }

        file = best!;
        if (!ReferenceEquals(file, recipe.Source)) Declare(atFirst);
        var after = ReferenceEquals(file, recipe.Source) ? before : Checker.Check(With(file));
        var current = (Recipe)after.Book.Resolve(recipe.Id)!.File;
        var now = after.Profiles.Of(current);
        var comparison = Comparison.Of(before, after);
        var obstacles = new Obstacles(search, lines, goals, exact, profile);
        var figures = new List<AdjustedFigure>();
        for (int i = 0; i < targets.Count; i++)
        {
            var target = targets[i];
            if (target.Fact is not { } fact) continue;
            double value = now.Get(fact) is { IsKnown: true } known ? known.Value : double.NaN;
            bool isReached = target.Goal.IsReached(value);
            figures.Add(new AdjustedFigure(
                target.Name, Say.Unit(fact, now.IsSolid), target.Goal.Low, target.Goal.High, atFirst.Get(fact), now.Get(fact), isReached,
                isReached ? "" : obstacles.Of(i)));
        }

        var like = request.Like.Length > 0 ? StandIn.Of(now, after.Profiles, request.Like) : null;
        return new Adjustment(recipe, figures, ShownLines(lines, amounts), file, comparison)
        {
            Like = like,
            LikeBefore = request.Like.Length > 0 ? StandIn.Of(atFirst, before.Profiles, request.Like) : null,
            LikeInTheWay = like is null or { Holds: true } ? "" : LikeObstacle(like, lines),
            Harm = [.. Harm.Added(before, after)
                .Select(h => h.ToString())
                .Concat(comparison.New.Where(f => f.Rule.Safety).Select(f => $"{f.Rule.Id} in {f.Subject}: {f.Message}"))],
            Remarks = remarks,
        };
    }

    private bool SetsGlass => request.Glass.Length > 0 && recipe is Drink drink && drink.GlassWritten != request.Glass;

    private BookInput With(SourceFile changed) =>
        input with { Files = [.. input.Files.Select(f => f.Path == changed.Path ? changed : f)], Progress = null };

    /// <summary>Works the recipe out anew from a text.</summary>
    private void Replace(SourceFile text)
    {
        file = text;
        (var book, profiles) = Checker.Profile(With(text));
        profile = profiles.Of((Recipe)book.Resolve(recipe.Id)!.File);
    }

    /// <summary>The file with one item in the place of another, in its lines and in its steps.</summary>
    private SourceFile Swapped()
    {
        var edits = new List<TextEdit>();
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Item.Or("") == request.Without) edits.Add(new TextEdit(recipe.At(line.Item.Span), $"\"{request.Use}\""));
        }

        foreach (var step in recipe.Method)
        {
            foreach (var item in step.Items)
            {
                if (item.Or("") == request.Without) edits.Add(new TextEdit(recipe.At(item.Span), $"\"{request.Use}\""));
            }
        }

        return new SourceFile(recipe.Source.Path, TextEdits.Apply(recipe.Source, edits));
    }

    /// <summary>The lines that may change: what is poured or weighed, not by the dash or the piece, and not kept.</summary>
    private List<AmountLine> LinesOf()
    {
        var lines = new List<AmountLine>();
        foreach (var part in profile.Parts)
        {
            if (part is not { Phase: PartPhase.Mix or PartPhase.Top, IsWeighed: true, Material: { } material }
                || part.Line.Optional
                || !part.Line.Amount.IsGiven)
                continue;
            var amount = part.Line.Amount.Value;
            if (amount.Dimension is not (Dimension.Volume or Dimension.Mass) || !(amount.Base > 0)
                || request.Keep.Contains(part.Line.Item.Or(""))) continue;
            if (amount.Unit.Name is "dash" or "drop" or "dropper" or "spray" or "pinch" or "splash") continue;
            lines.Add(new AmountLine(part.Line.Item.Or(""), material, amount, amount.Base, part.Grams.Typical / amount.Base) { Part = part });
        }

        foreach (string id in request.Add.OrderBy(a => a, StringComparer.Ordinal))
        {
            var material = profiles.MaterialOf(id)!;
            bool pours = material.State == MaterialState.Liquid && !double.IsNaN(material.Density) && recipe is Drink;
            QuantityReader.TryRead(pours ? "1 ml" : "1 g", Measures.Default, out var like, out _);
            lines.Add(new AmountLine(id, material, like, 0, pours ? material.Density : 1));
        }

        return lines;
    }

    /// <summary>What is to be reached, as the search understands it.</summary>
    private List<Wanted> TargetsOf(RecipeProfile atFirst)
    {
        var targets = new List<Wanted>();
        foreach (var target in request.Targets) targets.Add(WantedOf(target.Fact, target.Low, target.High));
        if (request.Glass.Length > 0 && recipe is Drink drink && GlassFill.Of(profile, drink, request.Glass, Settings) is { } glass)
        {
            double room = (double.IsNaN(glass.WashLine) ? glass.Brim.Low * 0.95 : glass.WashLine) - glass.Ice;
            double foam = profile.Get(Fact.ServedVolume) is { IsKnown: true, Value: > 0 } served ? glass.Foam / served.Value : 0;
            double most = room / (1 + foam), least = Math.Min(most * 0.9, Math.Max(glass.Brim.Typical * GlassLeast.Value / 100, most * 0.85));
            targets.Add(WantedOf(Fact.ServedVolume, least, most));
        }

        if (request.Like.Length > 0) targets.AddRange(LikeTargets());
        if (request.Without.Length > 0)
        {
            // A drink keeps its alcohol and its balance, and may grow or shrink by the water; a preparation keeps what it contains.
            foreach (var fact in recipe is Drink ? new[] { Fact.Alcohol, Fact.SugarAcidRatio } : [Fact.Abv, Fact.Sugar, Fact.Acid])
            {
                if (targets.Exists(t => t.Fact == fact) || atFirst.Get(fact) is not { IsKnown: true } known) continue;
                if (WantedOf(fact, known.Value, known.Value) is { } wanted
                    && known.Value > wanted.Goal.Tolerance
                    && !double.IsNaN(wanted.Goal.Measure(atFirst.Grams)))
                    targets.Add(wanted);
            }
        }

        return targets;
    }

    /// <summary>How many times as much the recipe becomes where its volume is a target; 1 elsewhere.</summary>
    private double ScaleOf(List<Wanted> targets)
    {
        if (targets.Find(t => t.Fact is Fact.ServedVolume or Fact.MixVolume) is not { } volume) return 1;
        double now = volume.Goal.Measure(profile.Grams), to = Math.Min(Math.Max(now, volume.Goal.Low), volume.Goal.High);
        return now > 0 && to > 0 ? to / now : 1;
    }

    private Wanted WantedOf(Fact fact, double low, double high)
    {
        bool solid = profile.IsSolid;
        double serves = recipe.ServesOrOne, middle = (low + high) / 2;
        (Solving.Measure measure, double tolerance) = fact switch
        {
            Fact.Abv => (Solving.Strength, Strength.Value),
            Fact.Sugar => (solid ? Solving.SugarByMass : Solving.SugarPerVolume, Sugar.Value),
            Fact.Acid => (solid ? Solving.AcidByMass : Solving.AcidPerVolume, Acid.Value),
            Fact.SugarAcidRatio => (RatioOf, middle * Share.Value / 100),
            Fact.Brix => (Solving.Brix, Math.Max(0.1, middle * Share.Value / 100)),
            Fact.Salt => (solid ? Solving.SaltByMass : Solving.SaltPerVolume, Math.Max(0.01, middle * Share.Value / 100)),
            Fact.Alcohol => (grams => grams[(int)Component.Ethanol] / serves, middle * Share.Value / 100),
            Fact.ServedVolume or Fact.MixVolume => (grams => Solving.VolumeOf(grams) / serves, middle * Volume.Value / 100),
            _ => throw new ArgumentOutOfRangeException(nameof(fact), fact, "Nothing is solved for this fact."),
        };
        return new Wanted(
            fact, NameOf(fact), new AmountGoal(measure, low, high, Math.Max(1e-6, tolerance)),
            p => p.Get(fact) is { IsKnown: true } value ? value.Value : double.NaN);
    }

    private static double RatioOf(ReadOnlySpan<double> grams) => Solving.SugarOf(grams) / Solving.Titratable(grams);

    /// <summary>Each acid of the model, its sugar and its salt, in g per 100 mL.</summary>
    private IEnumerable<Wanted> LikeTargets()
    {
        var model = profiles.MaterialOf(request.Like)!;
        double per = 100 / Solving.VolumeOf(model.PerGram), all = Solving.AcidsOf(model.PerGram) * per;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            int at = (int)c;
            double there = model.PerGram[at] * per;
            if (there < all * 0.01 && profile.Grams[at] <= 0) continue;
            Solving.Measure measure = grams => 100 * grams[at] / Solving.VolumeOf(grams);
            yield return new Wanted(
                null, StandIn.AcidName(c), new AmountGoal(measure, there, there, all * ModelAcid.Value / 100), p => measure(p.Grams));
        }

        double sugar = Solving.SugarPerVolume(model.PerGram), salt = Solving.SaltPerVolume(model.PerGram);
        yield return new Wanted(
            null,
            "sugar",
            new AmountGoal(
                Solving.SugarPerVolume, Math.Max(0, sugar - StandIn.Sweet.Value), sugar + StandIn.Sweet.Value, StandIn.Sweet.Value),
            p => Solving.SugarPerVolume(p.Grams));
        yield return new Wanted(
            null, "salt", new AmountGoal(Solving.SaltPerVolume, 0, salt + StandIn.Salty.Value, StandIn.Salty.Value),
            p => Solving.SaltPerVolume(p.Grams));
    }

    /// <summary>Strength, sugar, acid and volume stay near what they are, where no target moves them.</summary>
    private List<AmountGoal> KeptOf(RecipeProfile atFirst, List<Wanted> targets)
    {
        var kept = new List<AmountGoal>();
        bool like = request.Like.Length > 0;
        foreach (var fact in new[] { Fact.Abv, Fact.Sugar, Fact.Acid })
        {
            if (targets.Exists(t => t.Fact == fact) || (like && fact != Fact.Abv)) continue;
            if (atFirst.Get(fact) is not { IsKnown: true } known) continue;
            var goal = WantedOf(fact, known.Value, known.Value).Goal;
            double here = goal.Measure(atFirst.Grams);
            if (!double.IsNaN(here)) kept.Add(goal with { Low = here, High = here });
        }

        double volume = Solving.VolumeOf(atFirst.Grams);
        if (!double.IsNaN(volume) && !targets.Exists(t => t.Fact is Fact.ServedVolume or Fact.MixVolume))
            kept.Add(new AmountGoal(Solving.Volume, volume, volume, volume * 0.05));
        return kept;
    }

    /// <summary>The file with the amounts written into it: also the shares and the yield of a preparation, and the glass.</summary>
    private SourceFile Written(List<AmountLine> lines, double[] amounts)
    {
        var edits = new List<TextEdit>();
        var now = Current;
        for (int i = 0; i < lines.Count; i++)
        {
            if (lines[i].Part is { } part && Math.Abs(amounts[i] - lines[i].Now) > 1e-9)
                edits.Add(new TextEdit(now.At(part.Line.Amount.Span), Rounding.Text(amounts[i], lines[i].Like)));
        }

        WriteShares(edits, lines, amounts, out double more);
        if (now is Prep { Yield: { IsGiven: true, Value.Dimension: Dimension.Mass or Dimension.Volume } yield } && Math.Abs(more - 1) > 1e-9)
            edits.Add(new TextEdit(now.At(yield.Span), Rounding.Text(Rounding.ToStep(yield.Value.Base * more, yield.Value, Settings), yield.Value)));
        var added = lines.Select((l, i) => (Line: l, Amount: amounts[i])).Where(a => a.Line.Part is null && a.Amount > 0).ToList();
        if (added.Count > 0 && now.Ingredients.Count > 0)
        {
            var last = now.Ingredients[now.Ingredients.Count - 1].Span;
            string gap = GapBefore(now, last);
            string text = string.Concat(added.Select(a =>
                $",{gap}{{ \"item\": \"{a.Line.Item}\", \"amount\": {Rounding.Text(a.Amount, a.Line.Like)} }}"));
            edits.Add(new TextEdit(now.At(new TextSpan(last.End, 0)), text));
        }

        if (SetsGlass && JsonEdits.AddProperty(now, "", "glass", $"\"{request.Glass}\"") is { } glass) edits.Add(glass);
        return new SourceFile(file.Path, TextEdits.Apply(file, edits));
    }

    private void WriteShares(List<TextEdit> edits, List<AmountLine> lines, double[] amounts, out double more)
    {
        double was = 0, will = 0;
        var grams = new List<(Line Line, double Grams)>();
        foreach (var part in profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed) continue;
            int at = lines.FindIndex(l => ReferenceEquals(l.Part, part));
            double g = at < 0 ? part.Grams.Typical : amounts[at] * lines[at].GramsPerUnit;
            grams.Add((part.Line, g));
            was += part.Grams.Typical;
            will += g;
        }

        for (int i = 0; i < lines.Count; i++) will += lines[i].Part is null ? amounts[i] * lines[i].GramsPerUnit : 0;
        more = was > 0 ? will / was : 1;
        foreach (var (line, g) in grams)
        {
            if (line.Share is not { IsGiven: true, Value.Dimension: Dimension.PercentByMass } share) continue;
            string text = Rounding.Text(Math.Round(100 * g / will, 2), share.Value);
            if (text != Rounding.Text(share.Value.Base, share.Value)) edits.Add(new TextEdit(Current.At(share.Span), text));
        }
    }

    /// <summary>What is declared of strength, alcohol and energy follows the amounts, where it agreed with the recipe before.</summary>
    private void Declare(RecipeProfile atFirst)
    {
        Replace(file);
        if (Current.Declares is not { } declares) return;
        var edits = new List<TextEdit>();
        Follow(Fact.Abv, declares.Abv, 0.1, "strength");
        Follow(Fact.Alcohol, declares.Alcohol, 0.1, "alcohol");
        Follow(Fact.Energy, declares.Energy, 1, "energy");
        if (edits.Count > 0) file = new SourceFile(file.Path, TextEdits.Apply(file, edits));

        void Follow(Fact fact, Given<Quantity> declared, double step, string name)
        {
            if (!declared.IsGiven || atFirst.Get(fact) is not { IsKnown: true } was || profile.Get(fact) is not { IsKnown: true } now) return;
            double said = declared.Value.Base;
            if (said < was.Low - step || said > was.High + step || (said >= now.Low && said <= now.High)) return;
            double right = Math.Round(now.Value / step) * step;
            edits.Add(new TextEdit(Current.At(declared.Span), Rounding.Text(right, declared.Value)));
            remarks.Add($"The declared {name} follows: {Rounding.Words(said, declared.Value)} becomes {Rounding.Words(right, declared.Value)}.");
        }
    }

    private static string GapBefore(BookFile file, TextSpan span)
    {
        var bytes = file.Source.Utf8.Span;
        int from = span.Start;
        while (from > 0 && bytes[from - 1] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n') from--;
        string before = Encoding.UTF8.GetString(bytes.Slice(from, span.Start - from).ToArray());
        int line = before.LastIndexOf('\n');
        return line >= 0 ? before.Substring(line) : " ";
    }

    private List<AdjustedLine> ShownLines(List<AmountLine> lines, double[] amounts)
    {
        var shown = new List<AdjustedLine>();
        foreach (var part in before.Profiles.Of(recipe).Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top)) continue;
            string item = part.Line.Item.Or(""), after = request.Without.Length > 0 && item == request.Without ? request.Use : item;
            int at = lines.FindIndex(l => l.Part?.Line.Number == part.Line.Number && l.Part.Line.Role == part.Line.Role);
            string was = part.Line.Amount.IsGiven ? Rounding.Words(part.Line.Amount.Value.Base, part.Line.Amount.Value) : "";
            shown.Add(new AdjustedLine(after, item, was, at < 0 ? was : Rounding.Words(amounts[at], lines[at].Like), at >= 0));
        }

        for (int i = 0; i < lines.Count; i++)
        {
            if (lines[i].Part is null && amounts[i] > 0)
                shown.Add(new AdjustedLine(lines[i].Item, "", "", Rounding.Words(amounts[i], lines[i].Like), true));
        }

        return shown;
    }

    /// <summary>Which acid no line brings, and what would; else what is furthest off.</summary>
    private string LikeObstacle(StandIn pair, List<AmountLine> lines)
    {
        var missing = new List<string>();
        double all = Solving.AcidsOf(pair.Model.PerGram);
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            if (pair.Model.Of(c) < all * StandIn.Share.Value / 100 || lines.Exists(l => l.Material.Of(c) > 0)) continue;
            string id = StandIn.AcidName(c).Replace(' ', '-');
            missing.Add(BuiltInCatalogue.Find(id) is not null
                ? $"no line that may change brings {StandIn.AcidName(c)} (--add {id} would)"
                : $"no line that may change brings {StandIn.AcidName(c)}");
        }

        if (missing.Count > 0) return Say.List(missing);
        var off = new List<string>();
        if (!pair.TotalHolds) off.Add("the acid as a whole");
        if (!pair.SharesHold) off.Add($"the share of {StandIn.AcidName(pair.Furthest)}");
        if (!pair.SugarHolds) off.Add(pair.Sugar.Here < pair.Sugar.There ? "too little sugar" : "too much sugar, which the lines that stay bring");
        if (!pair.SaltHolds) off.Add("the salt that the lines bring");
        if (!pair.PhHolds) off.Add("the pH, which the minerals of the juice hold up or down");
        return $"what is left is {Say.List(off)}";
    }

    private static string NameOf(Fact fact) => fact switch
    {
        Fact.Abv => "strength",
        Fact.SugarAcidRatio => "sugar to acid",
        Fact.ServedVolume => "volume in the glass",
        Fact.MixVolume => "volume",
        Fact.Brix => "Brix",
        _ => FactNames.Name(fact),
    };

    private static bool IsSame(double[] a, double[] b) => a.Zip(b, (x, y) => Math.Abs(x - y) < 1e-9).All(same => same);

    /// <summary>A target with what the recipe, worked out anew, comes to.</summary>
    private sealed record Wanted(Fact? Fact, string Name, AmountGoal Goal, Func<RecipeProfile, double> Real);

    /// <summary>Says why a target is not reached.</summary>
    private sealed class Obstacles(AmountSearch search, List<AmountLine> lines, List<Wanted> goals, double[] exact, RecipeProfile profile)
    {
        public string Of(int number)
        {
            var (_, name, goal, _) = goals[number];
            if (lines.Count == 0) return "no line may change";
            if (!lines.Exists(l => Moves(l, goal))) return $"none of the lines that may change moves the {name}";
            double[] alone = search.Exact([goal], []);
            double furthest = search.Value(goal.Measure, alone);
            if (!goal.IsReached(furthest))
                return $"with every amount between a twelfth and {AmountSearch.Most:0} times what it is, it comes no nearer than "
                    + $"{Say.Number(furthest)}{Strongest(goals[number].Fact)}";
            if (goal.IsReached(search.Value(goal.Measure, exact)))
                return $"the steps of the bar's tools: between them, {Amounts(exact)} would reach it";
            var others = goals.Where((g, i) => i != number && !g.Goal.IsReached(search.Value(g.Goal.Measure, alone))).Select(g => g.Name).ToList();
            string way = Amounts(alone) is { Length: > 0 } changed ? $"alone it is reached with {changed}" : "alone it is reached as it is";
            return others.Count > 0 ? $"the {Say.List(others)} asked for with it: {way}" : $"the figures that stay: {way}";
        }

        /// <summary>
        /// Whether half as much again of a line, or a hundredth of the mass of a new
        /// one, moves a figure by a tenth of its tolerance.
        /// </summary>
        private bool Moves(AmountLine line, AmountGoal goal)
        {
            double[] amounts = search.Now;
            double was = search.Value(goal.Measure, amounts);
            int at = lines.IndexOf(line);
            amounts[at] = line.Now > 0 ? line.Now * 1.5 : profile.InputMass / 100 / line.GramsPerUnit;
            return Math.Abs(search.Value(goal.Measure, amounts) - was) > goal.Tolerance / 10;
        }

        private string Strongest(Fact? fact)
        {
            Solving.Measure? measure = fact switch
            {
                Fact.Abv => Solving.Strength,
                Fact.Sugar => Solving.SugarByMass,
                Fact.Acid => Solving.AcidByMass,
                _ => null,
            };
            if (measure is null) return "";
            var most = lines.OrderByDescending(l => measure(l.Material.PerGram) is var v && double.IsNaN(v) ? -1 : v)
                .ThenBy(l => l.Item, StringComparer.Ordinal)
                .First();
            string unit = fact == Fact.Abv ? "% vol" : "g/100 g";
            string ice = profile.Chill is { } chill ? $", and the ice adds {Say.Number(100 * chill.Ratio.Typical, 0)} % of water" : "";
            return $": the most of it is in {most.Item} ({Say.Number(measure(most.Material.PerGram), 1)} {unit}){ice}";
        }

        private string Amounts(double[] amounts) =>
            Say.List([.. lines.Select((l, i) => (Line: l, Amount: amounts[i]))
                .Where(a => Math.Abs(a.Amount - a.Line.Now) > 0.005 * Math.Max(a.Line.Now, a.Amount))
                .Select(a => $"{Rounding.Words(Math.Round(a.Amount, 1), a.Line.Like)} {a.Line.Item}")]);
    }
}
