using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

[Rule("SL9023", "menu-claim-not-checked", "A claim of a menu is not checked", Level.Note, Safety = true)]
internal sealed partial class MenuClaimNotChecked : MenuRule
{
    public override void Check(FileContext context, Menu menu)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in menu.Drinks)
        {
            foreach (var placed in Claims.Of(menu, entry, context.Book))
            {
                // The name of the menu speaks of all drinks and is told once.
                if (placed.Claim.Meaning.Kind == ClaimKind.Unknown && seen.Add(placed.Path + " " + placed.Claim.Words))
                    context.Report(ClaimNotChecked.Of(Rule, placed, context));
            }
        }
    }
}
