using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

/// <summary>A claim of a recipe or a menu, and where it stands.</summary>
/// <param name="Claim">The claim.</param>
/// <param name="Text">The text that holds it.</param>
/// <param name="Path">JSON path of the text.</param>
/// <param name="InList">Its number in a list of claims; -1 where it stands in prose.</param>
internal readonly record struct PlacedClaim(ReadClaim Claim, Given<string> Text, string Path, int InList)
{
    /// <summary>Whether it stands in a note, which only the staff reads: they answer guests by it.</summary>
    public bool IsNote { get; init; }

    /// <summary>The line on which it stands, of which alone it speaks; <see langword="null"/> where it speaks of all.</summary>
    public Line? Of { get; init; }

    /// <summary>The highest level of a finding about it: what a note means is less sure than what a guest is told.</summary>
    /// <param name="law">The highest level that the law behind it bears.</param>
    public Level? Capped(Level? law) => IsNote && law is not < Level.Warning ? Level.Warning : law;
}

/// <summary>What became of a claim.</summary>
/// <param name="Answer">Broken or not shown.</param>
/// <param name="Because">Why, as the second half of a sentence.</param>
/// <param name="Source">The law or practice.</param>
/// <param name="Cap">The highest level that the source bears.</param>
/// <param name="Culprit">The ingredient that breaks it, if one does.</param>
/// <param name="Evidence">Facts and limits.</param>
internal sealed record ClaimVerdict(
    Answer Answer, string Because, string Source, Level? Cap, TreeLeaf? Culprit, IReadOnlyList<Evidence> Evidence)
{
    /// <summary>The line of the recipe that stands against it, where no leaf of the tree is known.</summary>
    public Part? Line { get; init; }

    /// <summary>The line that stands against it, however it is known.</summary>
    public Part? Against => Culprit?.Part ?? Line;
}

/// <summary>Holds claims against the tree and the facts of a recipe.</summary>
internal static class Claims
{
    private static readonly LabelRule VeganLaw = LabellingTable.Of("vegan-claim");
    private static readonly LabelRule VegetarianLaw = LabellingTable.Of("vegetarian-claim");
    private static readonly LabelRule GlutenLaw = LabellingTable.Of("gluten-free-claim");
    private static readonly LabelRule GlutenLawAnz = LabellingTable.Of("gluten-free-claim-anz");
    private static readonly LabelRule DairyLaw = LabellingTable.Of("dairy-free-claim");
    private static readonly Limit ClaimStrength = Limits.Of("claims-strength");
    private static readonly Limit SugarFree = Limits.Of("sugar-free-claim");
    private static readonly Limit LowSugars = Limits.Of("low-sugars-claim");
    private static readonly Limit Lactose = Limits.Of("lactose-free-claim");
    private static readonly Limit[] LactoseOfCountries = [Limits.Of("lactose-free"), Limits.Of("lactose-free-none")];
    private static readonly Limit[] AlcoholFree = [.. AlcoholLimits.Free.Select(Limits.Of)];
    private static readonly Limit[] AlcoholFreeBeer = [.. AlcoholLimits.FreeBeer.Select(Limits.Of)];
    private static readonly Limit[] NonAlcoholic = [.. AlcoholLimits.NonAlcoholic.Select(Limits.Of)];
    private static readonly Limit[] DeAlcoholised = [.. AlcoholLimits.DeAlcoholised.Select(Limits.Of)];
    private static readonly Limit[] LowAlcohol = [.. AlcoholLimits.Low.Select(Limits.Of)];
    private static readonly Limit Declared = Limits.Of("declare-strength-from");
    private static readonly Limit AlcoholFreeElsewhere = Limits.Of("alcohol-free-elsewhere");
    private static readonly Limit NoAlcohol = Limits.Of("guard-no-alcohol");
    private static readonly LabelRule FreeFromLaw = LabellingTable.Of("free-from-claim");
    private static readonly FixedList<string> GlutenTokens = ["wheat", "barley", "rye", "oats"];
    private static readonly FixedList<string> MilkTokens = ["milk"];

    /// <summary>
    /// The claims of a recipe: its list of claims, its name, what it tells the guest, and its notes, those of its steps and of its
    /// lines; what is said on a line is said of that line.
    /// </summary>
    public static FixedList<PlacedClaim> Of(Recipe recipe, LinkedBook book)
    {
        List<PlacedClaim>? claims = null;
        AddText(ref claims, recipe.Name, "name", ClaimPlace.Names, book);
        if (recipe.Declares is { } declares)
        {
            AddList(ref claims, declares.Claims, "declares.claims", book);
            for (int i = 0; i < declares.Advisory.Count; i++) AddText(
                ref claims, declares.Advisory[i], $"declares.advisory[{i + 1}]", ClaimPlace.Anywhere, book);
        }

        AddNotes(ref claims, recipe.Notes, "notes", book);
        foreach (var step in recipe.Method)
        {
            if (step.Note.IsGiven && ClaimReader.MayHold(step.Note.Value))
                AddNote(ref claims, step.Note, RecipeContext.PathOf(recipe, step) + ".note", null, book);
        }

        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Note.IsGiven && ClaimReader.MayHold(line.Note.Value))
                AddNote(ref claims, line.Note, RecipeContext.PathOf(line, "note"), line, book);
        }

        AddUnread(ref claims, recipe, recipe.Declares?.Span ?? default, book);
        return claims is null ? [] : FixedList.Of(claims);
    }

    /// <summary>
    /// The claims of a menu about one of its drinks: its list of claims, its name, words and notes, and the name and notes of the menu.
    /// </summary>
    public static FixedList<PlacedClaim> Of(Menu menu, MenuEntry entry, LinkedBook book)
    {
        List<PlacedClaim>? claims = null;
        string path = $"drinks[{entry.Drink.Or("")}]";
        AddText(ref claims, menu.Name, "name", ClaimPlace.Names, book);
        AddText(ref claims, entry.Name, path + ".name", ClaimPlace.Names, book);
        AddText(ref claims, entry.Words, path + ".words", ClaimPlace.Anywhere, book);
        AddList(ref claims, entry.Claims, path + ".claims", book);
        AddNotes(ref claims, entry.Notes, path + ".notes", book);
        AddNotes(ref claims, menu.Notes, "notes", book);
        AddUnread(ref claims, menu, entry.Span, book);
        return claims is null ? [] : FixedList.Of(claims);
    }

    private static void AddText(ref List<PlacedClaim>? claims, Given<string> text, string path, ClaimPlace where, LinkedBook book)
    {
        if (!text.IsGiven || !ClaimReader.MayHold(text.Value)) return;
        foreach (var claim in ClaimReader.Read(text.Value, where, book)) (claims ??= []).Add(new PlacedClaim(claim, text, path, -1));
    }

    private static void AddNotes(ref List<PlacedClaim>? claims, FixedList<Given<string>> notes, string path, LinkedBook book)
    {
        for (int i = 0; i < notes.Count; i++)
        {
            if (notes[i].IsGiven && ClaimReader.MayHold(notes[i].Value))
                AddNote(ref claims, notes[i], notes.Count == 1 ? path : $"{path}[{i + 1}]", null, book);
        }
    }

    private static void AddNote(ref List<PlacedClaim>? claims, Given<string> note, string path, Line? of, LinkedBook book)
    {
        foreach (var claim in ClaimReader.ReadNote(note.Value, book))
            (claims ??= []).Add(new PlacedClaim(claim, note, path, -1) { IsNote = true, Of = of });
    }

    /// <summary>Claims that are no single words, so that their list has a finding and was not read: "nut safe" for "nut-safe".</summary>
    private static void AddUnread(ref List<PlacedClaim>? claims, BookFile file, TextSpan within, LinkedBook book)
    {
        foreach (var (text, path) in UnreadTexts.Of(file))
        {
            if (text.Span.Start >= within.Start && text.Span.End <= within.End && path.IndexOf("claims", StringComparison.Ordinal) >= 0)
                AddText(ref claims, text, path, ClaimPlace.Claims, book);
        }
    }

    private static void AddList(ref List<PlacedClaim>? claims, FixedList<Given<string>> list, string path, LinkedBook book)
    {
        for (int i = 0; i < list.Count; i++)
        {
            if (!list[i].IsGiven) continue;
            var read = ClaimReader.Read(list[i].Value, ClaimPlace.Claims, book);
            if (read.Count == 0) read.Add(new ReadClaim(list[i].Value, new ClaimMeaning(ClaimKind.Unknown, list[i].Value, []), false));
            foreach (var claim in read) (claims ??= []).Add(new PlacedClaim(claim, list[i], $"{path}[{list[i].Value}]", i));
        }
    }

    /// <summary>What became of a claim; <see langword="null"/> where it holds, or nothing can be said.</summary>
    /// <param name="claim">What is claimed.</param>
    /// <param name="context">What is checked.</param>
    /// <param name="profile">The recipe that it is claimed of.</param>
    /// <param name="of">The line that it is claimed of alone; <see langword="null"/> where it is claimed of all.</param>
    public static ClaimVerdict? Judge(ClaimMeaning claim, BookContext context, RecipeProfile profile, Line? of = null)
    {
        var settings = context.Settings;
        if (of is not null
            && claim.Kind is not (ClaimKind.Vegan or ClaimKind.Vegetarian or ClaimKind.GlutenFree or ClaimKind.DairyFree
                or ClaimKind.Allergens or ClaimKind.Animals))
            return null;
        return claim.Kind switch
        {
            ClaimKind.Vegan => Origin(profile, VeganLaw, vegan: true, of),
            ClaimKind.Vegetarian => Origin(profile, VegetarianLaw, vegan: false, of),
            ClaimKind.GlutenFree =>
                Without(profile, GlutenTokens, GlutenLawAnz.AppliesIn(settings) ? GlutenLawAnz : GlutenLaw, "gluten", of),
            ClaimKind.DairyFree => Without(profile, MilkTokens, DairyLaw, "milk", of),
            ClaimKind.LactoseFree => LactoseFree(profile, settings),
            ClaimKind.AlcoholFree =>
                Strength(
                    profile, settings, IsBeer(profile) ? [.. AlcoholFree, .. AlcoholFreeBeer] : AlcoholFree, AlcoholFreeElsewhere,
                    "alcohol-free"),
            ClaimKind.NonAlcoholic => Strength(profile, settings, NonAlcoholic, AlcoholFreeElsewhere, "non-alcoholic"),
            ClaimKind.DeAlcoholised => Strength(profile, settings, DeAlcoholised, null, "de-alcoholised"),
            ClaimKind.LowAlcohol => Strength(profile, settings, LowAlcohol, null, "low alcohol"),
            ClaimKind.SugarFree => Sugar(profile, settings, SugarFree),
            ClaimKind.LowSugar => Sugar(profile, settings, LowSugars),
            ClaimKind.NoAddedSugar => NoSugarAdded(profile, settings),
            ClaimKind.CaffeineFree => CaffeineFree(profile),
            ClaimKind.Allergens => Without(profile, claim.Tokens, FreeFromLaw, claim.What, of),
            ClaimKind.Animals => OfAnimals(profile, claim.Tokens, claim.What, of),
            ClaimKind.Ingredient => OfIngredient(context, profile, claim.What),
            _ => null,
        };
    }

    /// <summary>A part that resolves to nothing, here or in a preparation: it may be anything.</summary>
    private static Part? Unresolved(RecipeProfile profile, Line? of = null) =>
        of is null
            ? profile.Unresolved
            : profile.Unresolved is null
                ? null
                : profile.Parts.FirstOrDefault(p => p.Line == of
                    && (p.Item is null || (p.Item.File is Recipe recipe && profile.Set.Of(recipe).Unresolved is not null)));

    private static string NameOf(Part part) => part.Line.Item.Or("a line without an item");

    private static ClaimVerdict NotKnown(Part part, string what, LabelRule law) =>
        new(
            Answer.NotShown, $"what is in `{NameOf(part)}` is not known, so it cannot be called free from {what}", law.Source,
            Level.Warning, null, [Proof.Of("not known of", NameOf(part))])
        { Line = part };

    private static ClaimVerdict? CaffeineFree(RecipeProfile profile)
    {
        var caffeine = profile.Get(Fact.Caffeine);
        if (caffeine.IsKnown && caffeine.Low > 0)
            return new ClaimVerdict(
                Answer.Broken, $"it holds {Say.Fact(Fact.Caffeine, caffeine, profile.IsSolid)} of caffeine", FreeFromLaw.Source,
                FreeFromLaw.LevelCap, null, [Proof.Of(Fact.Caffeine, caffeine)]);
        if (caffeine.IsKnown && caffeine.High <= 0 && Unresolved(profile) is null) return null;
        return new ClaimVerdict(
            Answer.NotShown, "its caffeine is not known", FreeFromLaw.Source, Level.Warning, null,
            [Proof.Of("caffeine", caffeine.OpenBecause ?? "not known")]);
    }

    private static ClaimVerdict? OfAnimals(RecipeProfile profile, FixedList<string> animals, string what, Line? of)
    {
        TreeLeaf? open = null;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (of is not null && leaf.Part.Line != of) continue;
            string origin = AnimalOf(leaf.Ingredient);
            if (animals.Contains(origin))
                return new ClaimVerdict(
                    Answer.Broken, $"`{Last(leaf)}` comes from {Beast(origin)}{Via(leaf)}", FreeFromLaw.Source, FreeFromLaw.LevelCap, leaf,
                    [Proof.Of("animal", origin)]);
            if (origin == "unknown") open ??= leaf;
        }

        if (Unresolved(profile, of) is { } part) return NotKnown(part, what, FreeFromLaw);
        return open is { } unknown
            ? new ClaimVerdict(
                Answer.NotShown, $"whether `{Last(unknown)}` comes from animals is not known{Via(unknown)}", FreeFromLaw.Source,
                Level.Warning, unknown, [Proof.Of("animal", "unknown")])
            : null;
    }

    /// <summary>
    /// The animal origin of an ingredient, itself or by what it is like; of one that states none, that of its allergens, else unknown.
    /// </summary>
    private static string AnimalOf(Ingredient ingredient)
    {
        string animal = ingredient.Animal.Or("unknown");
        if (animal is not ("none" or "unknown") || ingredient.Allergens is not { } stated) return animal;
        foreach (string token in stated.Contains)
        {
            if (token is "milk" or "egg" or "fish" or "crustacean" or "mollusc") return token;
        }

        return animal;
    }

    private static ClaimVerdict? OfIngredient(BookContext context, RecipeProfile profile, string what)
    {
        var held = HeldWords.Of(context, profile);
        int at = held.PartOf(what);
        if (at >= 0)
        {
            var part = held.Parts[at];
            return new ClaimVerdict(
                Answer.Broken, $"`{NameOf(part)}` is made from it or has its name", FreeFromLaw.Source, Level.Warning, null,
                [Proof.Of("comes in", NameOf(part))])
            { Line = part };
        }

        if (Unresolved(profile) is { } open) return NotKnown(open, what, FreeFromLaw);
        return held.IsManifold
            ? new ClaimVerdict(
                Answer.NotShown,
                $"a liqueur, vermouth or beer in it may be made with {what}, and no file says whether it is",
                FreeFromLaw.Source,
                Level.Note,
                null,
                [Proof.Of("claimed to be without", what)])
            : null;
    }

    private static ClaimVerdict? Origin(RecipeProfile profile, LabelRule law, bool vegan, Line? of)
    {
        TreeLeaf? open = null;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (of is not null && leaf.Part.Line != of) continue;
            switch (AnimalOf(leaf.Ingredient))
            {
                case "none":
                    break;
                case "unknown":
                    if (vegan) open ??= leaf;
                    break;
                case "milk" or "egg" or "honey" when !vegan:
                    break;
                case var origin:
                    return new ClaimVerdict(
                        Answer.Broken, $"`{Last(leaf)}` comes from {Beast(origin)}{Via(leaf)}", law.Source, law.LevelCap, leaf,
                        [Proof.Of("animal", origin)]);
            }
        }

        if (Unresolved(profile, of) is { } part) return NotKnown(part, "animal product", law);
        return open is { } unknown
            ? new ClaimVerdict(
                Answer.NotShown,
                $"whether `{Last(unknown)}` comes from animals or is fined with egg, milk or fish is not known{Via(unknown)}",
                law.Source,
                Level.Warning,
                unknown,
                [Proof.Of("animal", "unknown")])
            : null;
    }

    private static ClaimVerdict? Without(RecipeProfile profile, FixedList<string> tokens, LabelRule law, string what, Line? of = null)
    {
        AllergenOrigin? open = null, recalled = null;
        foreach (var origin in profile.Allergens.Origins)
        {
            if (!tokens.Contains(origin.Token) || (of is not null && origin.Part.Line != of)) continue;

            // What a law exempts in a thing that only may hold it (glucose syrup of wheat) is not held against it there.
            if (!origin.Certain && profile.Set.Book.Settings.Jurisdictions.All(j => !origin.CountsIn(j))) continue;
            if (origin.Certain && (origin.Token != "oats" || what != "gluten" || law == GlutenLawAnz))
            {
                if (origin.Mark != Mark.Memory) return Held(origin, law.LevelCap);
                recalled ??= origin;
                continue;
            }

            open ??= origin;
        }

        if (recalled is not null) return Held(recalled, Level.Warning);

        if (open is null)
        {
            if (Unresolved(profile, of) is { } part) return NotKnown(part, what, law);
            if (profile.Allergens.Unknown.FirstOrDefault(u => of is null || u.Part.Line == of) is { } unknown)
                return new ClaimVerdict(
                    Answer.NotShown,
                    $"the allergens of `{unknown.Through[unknown.Through.Count - 1]}` are not known, so it cannot be "
                        + $"called free from {what}",
                    law.Source,
                    Level.Warning,
                    null,
                    [Proof.Of("not known of", string.Join(" > ", unknown.Through))])
                { Line = unknown.Part };
            return null;
        }

        return new ClaimVerdict(
            Answer.NotShown,
            $"{open.Token} may come in {AllergenWords.Way(open)}, so it cannot be called free from {what}",
            law.Source,
            Level.Warning,
            LeafOf(profile, open),
            [Proof.Of("may come in", string.Join(" > ", open.Through))]);

        ClaimVerdict Held(AllergenOrigin origin, Level? cap) =>
            new(
                Answer.Broken, $"{origin.Token} comes in {AllergenWords.Way(origin)}", law.Source, cap, LeafOf(profile, origin),
                [Proof.Of("comes in", string.Join(" > ", origin.Through))]);
    }

    private static ClaimVerdict? LactoseFree(RecipeProfile profile, Settings settings)
    {
        var limit = Lactose;
        foreach (var stricter in LactoseOfCountries)
        {
            if (settings.JurisdictionIsStated && Applies(stricter, settings) && stricter.Value < limit.Value) limit = stricter;
        }

        double mass = profile.Mass;
        double lactose = profile.Grams[(int)Component.Lactose];
        if (!(mass > 0) || 100 * lactose / mass <= limit.Value)
        {
            if (Unresolved(profile) is { } part) return NotKnown(part, "lactose", DairyLaw);
            foreach (var unknown in profile.Allergens.Unknown) return NotKnown(unknown.Part, "lactose", DairyLaw);
            return mass > 0 && (profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) == 0
                || Without(profile, MilkTokens, DairyLaw, "lactose") is not { } milk
                ? null
                : milk with { Answer = Answer.NotShown, Cap = Level.Warning };
        }

        double share = 100 * lactose / mass;
        return new ClaimVerdict(
            Answer.Broken,
            $"it holds {Say.Number(share)} g of lactose in 100 g, above {Say.Number(limit.Value)} g",
            limit.Source, limit.LevelCap, null, [Proof.Of("lactose", share, "g/(100.g)"), Proof.Of(limit)]);
    }

    private static ClaimVerdict? Strength(RecipeProfile profile, Settings settings, Limit[] limits, Limit? elsewhere, string words)
    {
        Limit? strictest = null;
        foreach (var limit in limits)
        {
            if (Applies(limit, settings) && (strictest is null || limit.Value < strictest.Value)) strictest = limit;
        }

        if (elsewhere is not null && strictest is null && elsewhere.AppliesIn(settings)) strictest = elsewhere;
        if (strictest is null) return null;

        // Without a known dilution the strength before it is the most that it can be.
        var fact = Fact.Abv;
        var abv = profile.Get(Fact.Abv);
        if (!abv.IsKnown)
        {
            fact = Fact.MixAbv;
            abv = profile.Get(Fact.MixAbv);
        }

        // Where nothing is allowed, the trace of a ripe fruit is nothing.
        if (strictest.Value <= 0 && abv.IsKnown && abv.Value < NoAlcohol.Value && Unresolved(profile) is null) return null;
        var stand = Check.AtMost(abv, strictest.Value);
        if (stand == Stand.Holds && Unresolved(profile) is null) return null;
        if (!abv.IsKnown || stand == Stand.Holds)
            return new ClaimVerdict(
                Answer.NotShown,
                $"its strength is not known, so it is not shown to be within the {Say.Number(strictest.Value)} % vol "
                    + $"that \"{words}\" allows",
                strictest.Source,
                Level.Warning,
                Strongest(profile),
                [Proof.Of(fact, abv), Proof.Of(strictest)]);
        string because = $"it comes to {Say.Fact(fact, abv)}, {(stand == Stand.Broken ? "above" : "which is not shown to be within")} the "
            + $"{Say.Number(strictest.Value)} % vol that \"{words}\" allows";

        // Over what the law has declared as a strength no figure recalled for the words is needed.
        bool plain = stand == Stand.Broken && strictest.Value < Declared.Value && abv.Low > Declared.Value && Declared.AppliesIn(settings);
        string source = plain && strictest.LevelCap is not null
            ? $"{strictest.Source}; over {Say.Number(Declared.Value)} % vol the strength is to be declared: {Declared.Source}"
            : strictest.Source;
        return new ClaimVerdict(
            stand == Stand.Broken ? Answer.Broken : Answer.NotShown, because, source,
            plain ? null : stand == Stand.Broken ? strictest.LevelCap : Level.Warning, Strongest(profile),
            [Proof.Of(fact, abv), Proof.Of(strictest)]);
    }

    private static ClaimVerdict? Sugar(RecipeProfile profile, Settings settings, Limit limit)
    {
        if (!limit.AppliesIn(settings)) return null;
        if (OverClaimStrength(profile) is { } barred) return barred;
        var sugar = profile.Get(Fact.Sugar);
        if (!sugar.IsKnown || Unresolved(profile) is not null)
            return new ClaimVerdict(
                Answer.NotShown, "its sugar is not known", limit.Source, Level.Warning, null,
                [Proof.Of(Fact.Sugar, sugar), Proof.Of(limit)]);
        var stand = Check.AtMost(sugar, limit.Value);
        if (stand == Stand.Holds) return MaybeOverClaimStrength(profile);
        bool broken = stand == Stand.Broken;
        return new ClaimVerdict(
            broken ? Answer.Broken : Answer.NotShown,
            $"it holds {Say.Fact(Fact.Sugar, sugar, profile.IsSolid)} of sugar, {(broken ? "above" : "which is not shown to be within")} "
                + $"the {Say.Number(limit.Value)} g that the claim allows",
            limit.Source, broken ? limit.LevelCap : Level.Warning, null, [Proof.Of(Fact.Sugar, sugar), Proof.Of(limit)]);
    }

    private static ClaimVerdict? NoSugarAdded(RecipeProfile profile, Settings settings)
    {
        if (!SugarFree.AppliesIn(settings)) return null;
        if (OverClaimStrength(profile) is { } barred) return barred;
        var added = RecipeTree.First(
            profile,
            i => i.IngredientKind.OrNone() is { Sweetens: true } or { IsLiqueur: true }
                && i.Values.Any(v => v.Key.StartsWith("sugars.", StringComparison.Ordinal) && v.Value.Typical > 0));
        return added is { } leaf
            ? new ClaimVerdict(
                Answer.Broken, $"`{Last(leaf)}` sweetens it{Via(leaf)}", SugarFree.Source, SugarFree.LevelCap, leaf, [Proof.Of(SugarFree)])
            : MaybeOverClaimStrength(profile);
    }

    private static ClaimVerdict? OverClaimStrength(RecipeProfile profile)
    {
        var abv = profile.Get(Fact.Abv);
        return abv.IsKnown && abv.Low > ClaimStrength.Value
            ? new ClaimVerdict(
                Answer.Broken,
                $"at {Say.Fact(Fact.Abv, abv)} it is above the {Say.Number(ClaimStrength.Value)} % vol limit for such claims",
                ClaimStrength.Source,
                ClaimStrength.LevelCap,
                null,
                [Proof.Of(Fact.Abv, abv), Proof.Of(ClaimStrength)])
            : null;
    }

    /// <summary>A strength that is not shown to be within what such claims may be made at; one that is over is told before.</summary>
    private static ClaimVerdict? MaybeOverClaimStrength(RecipeProfile profile)
    {
        var abv = profile.Get(Fact.Abv);
        return abv.IsKnown && abv.High <= ClaimStrength.Value
            ? null
            : new ClaimVerdict(
                Answer.NotShown,
                (abv.IsKnown ? $"at {Say.Fact(Fact.Abv, abv)} it may be above" : "nothing shows that it is within")
                    + $" the {Say.Number(ClaimStrength.Value)} % vol limit for such claims",
                ClaimStrength.Source, Level.Warning, null, [Proof.Of(Fact.Abv, abv), Proof.Of(ClaimStrength)]);
    }

    private static bool Applies(Limit limit, Settings settings)
    {
        if (!settings.JurisdictionIsStated) return true;
        foreach (string jurisdiction in limit.Jurisdictions)
        {
            if (settings.AppliesIn(jurisdiction) || settings.StatedJurisdictions.Contains(jurisdiction)) return true;
        }

        return false;
    }

    /// <summary>Whether all alcohol in it comes with beer, for which some countries have figures of their own.</summary>
    private static bool IsBeer(RecipeProfile profile)
    {
        bool beer = false;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (leaf.Ingredient.IngredientKind.OrNone().IsBeer) beer = true;
            else if (leaf.Ingredient.Values.TryGetValue("strength", out var strength) && strength.Typical > 0) return false;
        }

        return beer;
    }

    private static TreeLeaf? Strongest(RecipeProfile profile)
    {
        TreeLeaf? most = null;
        double strength = 0;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (!leaf.Ingredient.Values.TryGetValue("strength", out var value) || value.Typical <= strength) continue;
            strength = value.Typical;
            most = leaf;
        }

        return most;
    }

    private static TreeLeaf? LeafOf(RecipeProfile profile, AllergenOrigin origin)
    {
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (leaf.Part == origin.Part && Last(leaf) == origin.Through[origin.Through.Count - 1]) return leaf;
        }

        return null;
    }

    private static string Last(TreeLeaf leaf) => leaf.Through[leaf.Through.Count - 1];

    private static string Via(TreeLeaf leaf) =>
        leaf.Through.Count == 1
            ? ""
            : $" (through {string.Join(" and ", leaf.Through.Take(leaf.Through.Count - 1).Select(i => $"`{i}`"))})";

    private static string Beast(string origin) => origin switch
    {
        "milk" => "milk",
        "egg" => "egg",
        "honey" => "bees",
        "insect" => "insects",
        "gelatine" => "animal gelatine",
        "meat" => "meat",
        _ => origin,
    };
}
