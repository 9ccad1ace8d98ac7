using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules;

/// <summary>
/// A rule. Rules are stateless and run on many threads at once; they are found at compile time
/// (every sealed, non-abstract class that derives from this one is in <c>RuleRegistry.All</c>).
/// </summary>
public abstract class Rule
{
    /// <summary>What the rule is; the source generator writes it from the class's <see cref="RuleAttribute"/>.</summary>
    public abstract RuleInfo Info { get; }

    /// <summary>Checks the file of a context, where the rule is one about such files.</summary>
    internal virtual void Run(FileContext context)
    {
    }
}

/// <summary>A rule about what reading and binding a file found.</summary>
public abstract class FileRule : Rule
{
    /// <summary>Checks one file.</summary>
    public abstract void Check(FileContext context);

    internal sealed override void Run(FileContext context) => Check(context);
}

/// <summary>A rule about drinks and preparations alike.</summary>
public abstract class RecipeRule : Rule
{
    /// <summary>Checks one recipe.</summary>
    public abstract void Check(RecipeContext context);

    internal sealed override void Run(FileContext context) => Check((RecipeContext)context);
}

/// <summary>A rule about drinks.</summary>
public abstract class DrinkRule : Rule
{
    /// <summary>Checks one drink.</summary>
    public abstract void Check(RecipeContext context, Drink drink);

    internal sealed override void Run(FileContext context) => Check((RecipeContext)context, (Drink)context.File);
}

/// <summary>A rule about preparations.</summary>
public abstract class PrepRule : Rule
{
    /// <summary>Checks one preparation.</summary>
    public abstract void Check(RecipeContext context, Prep prep);

    internal sealed override void Run(FileContext context) => Check((RecipeContext)context, (Prep)context.File);
}

/// <summary>A rule about ingredients of the bar.</summary>
public abstract class IngredientRule : Rule
{
    /// <summary>Checks one ingredient.</summary>
    public abstract void Check(FileContext context, Ingredient ingredient);

    internal sealed override void Run(FileContext context) => Check(context, (Ingredient)context.File);
}

/// <summary>A rule about menus.</summary>
public abstract class MenuRule : Rule
{
    /// <summary>Checks one menu.</summary>
    public abstract void Check(FileContext context, Menu menu);

    internal sealed override void Run(FileContext context) => Check(context, (Menu)context.File);
}

/// <summary>A rule about stock files.</summary>
public abstract class StockRule : Rule
{
    /// <summary>Checks one stock file.</summary>
    public abstract void Check(FileContext context, Stock stock);

    internal sealed override void Run(FileContext context) => Check(context, (Stock)context.File);
}

/// <summary>A rule about price lists.</summary>
public abstract class PricesRule : Rule
{
    /// <summary>Checks one price list.</summary>
    public abstract void Check(FileContext context, PriceList list);

    internal sealed override void Run(FileContext context) => Check(context, (PriceList)context.File);
}

/// <summary>A rule about the book as a whole; it runs once.</summary>
public abstract class BookRule : Rule
{
    /// <summary>Checks the book.</summary>
    public abstract void Check(BookContext context);
}
