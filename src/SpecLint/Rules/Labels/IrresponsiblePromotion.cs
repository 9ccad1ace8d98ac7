using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7043", "irresponsible-promotion", "A menu promotes the drinking of alcohol", Level.Warning, Needs = [Fact.Abv])]
[Limit("claims-strength", "Drink")]
internal sealed partial class IrresponsiblePromotion : MenuRule
{
    public override void Check(FileContext context, Menu menu)
    {
        Look(context, menu, menu.Name, "name");
        for (int i = 0; i < menu.Notes.Count; i++) Look(context, menu, menu.Notes[i], menu.Notes.Count == 1 ? "notes" : $"notes[{i + 1}]");
        foreach (var entry in menu.Drinks)
        {
            if (!MayHoldAlcohol(context, entry)) continue;
            string path = $"drinks[{entry.Drink.Or("")}]";
            Read(context, entry.Name, path + ".name");
            Read(context, entry.Words, path + ".words");
            foreach (var note in entry.Notes) Read(context, note, path + ".notes");
        }
    }

    private static void Look(FileContext context, Menu menu, Given<string> text, string path)
    {
        if (text.IsGiven && PromotionTable.FormsIn(text.Value).Count > 0 && menu.Drinks.Any(e => MayHoldAlcohol(context, e)))
            Read(context, text, path);
    }

    private static bool MayHoldAlcohol(FileContext context, MenuEntry entry) =>
        !entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe
            || Findings.Check.AtMost(context.Profiles.Of(recipe).Get(Fact.Abv), Drink.Value) != Stand.Holds;

    private static void Read(FileContext context, Given<string> text, string path)
    {
        if (!text.IsGiven) return;
        foreach (var form in PromotionTable.FormsIn(text.Value))
        {
            foreach (string word in form.Words)
            {
                if (WordSearch.Find(text.Value, word) is not (>= 0 and var at) || MenuWords.IsDenied(text.Value, at)
                    || Phrases.IsDenied(text.Value, at, at + word.Length)) continue;
                var law = PromotionTable.LawOn(form, context.Settings);
                var stated = context.Settings.StatedJurisdictions;
                bool elsewhere = law is not null && stated.Count > law.Jurisdictions.Count(context.Settings.AppliesIn);
                context.Report(new(Rule)
                {
                    AskedLevel = law is null ? Level.Note : Level.Warning,
                    At = context.At(text.Span, path),
                    Key = form.Id,
                    Message = law is null
                        ? $"\"{word}\" offers {form.What}. Many licensing laws restrict that; none for the bar's places is known here."
                        : $"\"{word}\" offers {form.What}. {law.Place} {law.Says} ({law.Source}).",
                    Advice = law is null ? "Look it up in the local licensing law and the licence before it is printed."
                        : $"Take it out{(elsewhere ? $" where it is offered in {law.Place}" : "")}. The licence and local law decide.",
                    Evidence = [Proof.Of("words", word, context.At(text.Span))],
                });
                break;
            }
        }
    }
}
