using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7023", "juice-name-misused", "A soured, sweetened or watered preparation is named juice", Level.Warning)]
[Limit("juice-acid", "AddedAcid")]
internal sealed partial class JuiceName : PrepRule
{
    private static readonly LabelRule Law = LabellingTable.Of("juice-name");
    private static readonly LabelRule LawUs = LabellingTable.Of("juice-name-us");
    private static readonly string[] Qualified =
    [
        "acid-adjusted", "adjusted", "soured", "sour", "acidified", "sweetened", "super", "extended", "seasoned", "spiced", "salted",
        "cordial", "blend", "mix", "style", "fermented", "stretched", "house lime",
    ];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Name.IsGiven || !WordSearch.EndsWith(prep.Name.Value, "juice")) return;
        bool eu = Law.AppliesIn(context.Settings), us = LawUs.AppliesIn(context.Settings);
        if ((!eu && !us) || WordSearch.First(prep.Name.Value, Qualified) is not null) return;
        double acid = 0, litres = context.Profile.InputVolume / 1000;
        Part? added = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is not { } material) continue;
            var kind = material.Kind;
            if (kind.IsAcid && material.Ingredient is not null)
            {
                acid += material.State == MaterialState.Liquid ? 0 : part.Grams.Typical;

                // Citric acid alone may go in, up to the limit, and malic into pineapple; any other acid makes it something else.
                bool allowed = Additives.IsOrLike(context, part.Item!, "citric-acid")
                    || Additives.IsOrLike(context, part.Item!, "citric-acid-monohydrate")
                    || (Additives.IsOrLike(context, part.Item!, "malic-acid") && WordSearch.Has(prep.Name.Value, "pineapple"));
                if ((litres > 0 && acid / litres > AddedAcid.Value) || !allowed) added ??= part;
            }
            else if (kind.Sweetens || kind.IsWater)
            {
                added ??= part;
            }
        }

        if (added is null) return;
        string what = added.Material!.Kind.IsAcid && acid / litres > AddedAcid.Value
            ? $"{Say.Number(acid / litres)} g/L of acid is added, above {Say.Number(AddedAcid.Value)} g/L"
            : $"`{added.Line.Item.Value}` is added";
        var law = eu ? Law : LawUs;
        context.Report(new(Rule)
        {
            AskedLevel = Sold.IsSold(context, prep) ? law.LevelCap : Level.Note,
            At = context.At(prep.Name.Span, "name"),
            Message = $"It is named juice, and {what}. On a menu or label that is no longer juice ({law.Source}).",
            Advice = "Say what it is in the name: acid-adjusted juice, cordial, nectar, drink.",
            Evidence = [Proof.Of("added", added.Line.Item.Value, context.At(added.Line.Span)), Proof.Of(AddedAcid)],
            Related = [context.See(added.Line.Span, "is added")],
        });
    }
}
