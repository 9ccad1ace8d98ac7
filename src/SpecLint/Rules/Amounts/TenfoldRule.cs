using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>An agent far beyond what the family of preparation takes, held against the table of agents.</summary>
[Limit("amount-agent-over", "Over")]
[Limit("amount-agent-under", "Under")]
[Limit("amount-scale-steps", "Steps")]
internal abstract partial class TenfoldRule : PrepRule
{
    /// <summary>The group of agents.</summary>
    protected abstract string Group { get; }

    /// <summary>The highest level that a finding has.</summary>
    protected virtual Level Highest => Level.Error;

    /// <summary>Whether far too little is told too.</summary>
    protected virtual bool TellsTooLittle => true;

    /// <summary>Whether what is counted or poured is judged by its mass too.</summary>
    protected virtual bool CountsPieces => false;

    /// <summary>Whether the usual amounts are those of such a whole, of so many grams.</summary>
    protected virtual bool Concerns(RecipeProfile profile, double whole) => true;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        string family = prep.Family.OrNone().Id;

        // A stock that is diluted before it is used says so in its name or its target.
        if (Group == "acid" && IsStock(prep)) family = "";
        double whole = double.NaN;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is not { File: Ingredient } item || !part.IsWeighed || !line.Amount.IsGiven) continue;
            if (Find(item, family) is not { } use || use.Group != Group) continue;
            if (double.IsNaN(whole)) whole = Whole(context.Profile);
            bool weighed = line.Amount.Value.Dimension == Dimension.Mass;
            if (!(whole > 0) || !Concerns(context.Profile, whole) || !(weighed || CountsPieces) || part.Grams.Typical <= 0) continue;
            double share = part.Grams.Typical / whole * 100;
            bool over = share > use.High * Over.Value, under = TellsTooLittle && share < use.Low / Under.Value;
            if (!over && !under) continue;
            double tenth = over ? part.Grams.Typical / 10 : part.Grams.Typical * 10;
            double without = whole - part.Grams.Typical, right = tenth / (without + tenth) * 100;
            bool isTen = right >= use.Low && right <= use.High;
            double usual = isTen ? tenth : over ? use.High / (100 - use.High) * without : use.Low / (100 - use.Low) * without;
            string times = over
                ? $"{Say.Number(share / use.High, 1)} times the maximum"
                : $"{Say.Number(use.Low / share, 1)} times below the minimum";
            string grams = $"{Written.Number(usual)} g";
            context.Report(new(Info)
            {
                At = context.AmountOf(line),
                AskedLevel = under || use.Mark == Mark.Memory || Highest < Level.Error ? Level.Warning : null,
                Message = $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} in {Say.With(whole, "g")} is "
                    + $"{Say.Number(share)} %, {times} of the {Say.Number(use.Low)}–{Say.Number(use.High)} % usual for {use.Use} "
                    + $"({use.Source}){(isTen ? ": probably off by a factor of ten." : ".")}",
                Advice = isTen && weighed
                    ? $"Write {Written.Number(tenth)} g ({Say.Number(right)} %) if the decimal point is wrong."
                    : $"Check it: about {grams} would be usual.",
                Evidence =
                [
                    Written.Given(context, line), Proof.Of("share of the whole", share, "%"),
                    Proof.Of("usual most", use.High, "%", use.Source),
                ],
                Corrections = context.Write(line.Amount.Span, weighed && !IsBelowScale(context, usual) ? grams : null),
            });
        }
    }

    private static bool IsStock(Prep prep) =>
        prep.Target is { Acid.IsGiven: true }
        || prep.Name.Or("").IndexOf('%') >= 0
        || prep.Name.Or("").IndexOf("stock", StringComparison.OrdinalIgnoreCase) >= 0;

    /// <summary>Whether the bar's scale cannot weigh so little.</summary>
    private static bool IsBelowScale(RecipeContext context, double grams) =>
        context.Settings.Bar is { Scale.IsGiven: true } bar && grams < bar.Scale.Value.Base * Steps.Value;

    private static AgentUse? Find(Item item, string family) => AgentTable.Find(item.Id, family) ?? AgentTable.Find(item.CountsAs, family);

    /// <summary>
    /// Mass of all that goes in and of what is taken out again, g: an agent's dose is per whole. What is strained out leaves its juice.
    /// </summary>
    private static double Whole(RecipeProfile profile)
    {
        double sum = 0;
        bool strained = false;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is PartPhase.Beside) continue;
            if (!part.IsWeighed && part.Phase == PartPhase.Mix) return double.NaN;
            if (part.IsWeighed && (part.Phase != PartPhase.TakenOut || part.Line.RoleIsGiven)) sum += part.Grams.Typical;
            else strained = true;
        }

        return strained && profile.Mass > sum ? profile.Mass : sum;
    }
}
