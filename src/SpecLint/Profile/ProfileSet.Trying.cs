using SpecLint.Book;
using SpecLint.Linking;

namespace SpecLint.Profile;

/// <summary>Profiles of a book in which one file is tried as it would be with a correction.</summary>
public sealed partial class ProfileSet
{
    private readonly BookFile? tried;
    private RecipeProfile? triedProfile;
    private Material? triedMaterial;

    private ProfileSet(ProfileSet whole, LinkedBook book, BookFile tried)
    {
        this.book = book;
        this.tried = tried;
        preps = whole.preps;
        drinkNumbers = whole.drinkNumbers;
        drinks = whole.drinks;
        partsKeys = whole.partsKeys;
        materials = whole.materials;
        tooDeep = whole.tooDeep;
        prices = whole.prices;
    }

    /// <summary>The profiles with another text of one file, and its own, where it is a recipe; see <see cref="LinkedBook.With"/>.</summary>
    /// <param name="change">The file as it is and as it is tried.</param>
    /// <param name="room">Arrays for the profile of a drink.</param>
    internal (ProfileSet Set, RecipeProfile? Profile) With(FileChange change, ProfileRoom room)
    {
        var set = new ProfileSet(this, book.With(change), change.New!);
        if (change.New is Recipe recipe)
            set.triedProfile = new RecipeProfile(
                recipe, set, recipe is Prep ? preps[(Prep)change.Old!].Wave : WaveOfDrinks, recipe is Drink ? room : null);
        return (set, set.triedProfile);
    }

    /// <summary>The same with a recipe that differs only in what it declares.</summary>
    /// <param name="profile">The profile of the recipe as it is.</param>
    /// <param name="declaring">The recipe as it is tried.</param>
    internal (ProfileSet Set, RecipeProfile Profile) With(RecipeProfile profile, Recipe declaring)
    {
        var set = new ProfileSet(this, book.With(new FileChange(profile.Recipe, declaring)), declaring);
        return (set, set.triedProfile = profile.Declaring(declaring, set));
    }

    private Material MaterialOfTried(Item item) => item.File switch
    {
        Ingredient own => MaterialBuilder.Of(Catalogue.Inheritance.Flatten(own, FindIngredient), isBuiltIn: false),
        _ when triedProfile is not { } profile => Nothing(item.Id, "it is part of a cycle"),
        _ => item.ByProduct is null ? triedProfile.Material : triedProfile.ByProductMaterial(item.ByProduct),
    };
}
