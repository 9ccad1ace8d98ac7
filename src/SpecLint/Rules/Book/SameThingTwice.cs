using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Rules.Book;

[Rule("SL9003", "two-names-for-one", "Two preparations of one formula have two names", Level.Warning)]
internal sealed partial class SameThingTwice : BookRule
{
    public override void Check(BookContext context)
    {
        // Few preparations share family, items and number of steps with another; only those are looked at closely.
        var crowds = new Dictionary<long, List<Prep>>();
        foreach (var prep in context.Book.Preps)
        {
            if (prep.Ingredients.Count == 0) continue;
            long key = Formula.RoughKeyOf(prep);
            if (!crowds.TryGetValue(key, out var crowd)) crowds.Add(key, crowd = []);
            crowd.Add(prep);
        }

        foreach (var crowd in crowds.Values)
        {
            if (crowd.Count > 1) Compare(context, crowd);
        }
    }

    private static void Compare(BookContext context, List<Prep> crowd)
    {
        var groups = new Dictionary<string, List<Prep>>(StringComparer.Ordinal);
        foreach (var prep in crowd)
        {
            string key = Formula.KeyOf(prep);
            if (!groups.TryGetValue(key, out var group)) groups.Add(key, group = []);
            group.Add(prep);
        }

        foreach (var group in groups.Values)
        {
            for (int i = 1; i < group.Count; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    // Of one name they are told by the rule on names.
                    if (SameNameTwice.IsSame(group[i], group[j])
                        || Formula.Replaces(group[i], group[j])
                        || !Formula.IsSame(context.Profiles.Of(group[i]), context.Profiles.Of(group[j])))
                        continue;

                    // One ingredient alone is no formula, and a batch may be made in two sizes: only a copy counts, yield, steps and all.
                    if ((group[i].Ingredients.Count < 2 || group[i].BatchOf.IsGiven) && !Formula.IsCopy(group[i], group[j])) continue;
                    context.Report(Find(context, group[i], group[j]));
                    break;
                }
            }
        }
    }

    private static Finding Find(BookContext context, Prep second, Prep first)
    {
        int more = context.Book.UsersOf(second.Id).Count, less = context.Book.UsersOf(first.Id).Count, most = Math.Max(more, less);
        var (keep, drop) = more > less ? (second, first) : (first, second);
        return new(Rule)
        {
            At = new(second.Head, "name"),
            Key = first.Id,
            Message = $"`{second.Id}` and `{first.Id}` are made of the same {Say.Count(second.Ingredients.Count, "part")} in the same "
                + "shares, by the same steps: one thing under two names, made and dated twice.",
            Advice = $"Keep `{keep.Id}`, which {Say.Count(most, "recipe")} {(most == 1 ? "uses" : "use")}, and name it instead of "
                + $"`{drop.Id}`.",
            Evidence = [Proof.Of("same as", first.Id, first.Head)],
            Related = [new RelatedPlace(first.Head, "the same formula")],
            Corrections = Rename(context, drop.Id, keep.Id),
        };
    }

    internal static IReadOnlyList<Correction> Rename(BookContext context, string from, string to)
    {
        var edits = new List<TextEdit>();
        foreach (var user in context.Book.UsersOf(from))
        {
            foreach (var line in LinkedBook.LinesOf(user))
            {
                if (line.Item.IsGiven && line.Item.Value == from) edits.Add(new TextEdit(user.At(line.Item.Span), $"\"{to}\""));
            }
        }

        return Correction.Propose($"Name `{to}` instead of `{from}`.", edits);
    }
}
