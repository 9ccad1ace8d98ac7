using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <content>Drinks and preparations.</content>
public static partial class BookReader
{
    private static Drink BindDrink(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var drink = new Drink { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[DrinkShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, DrinkShape.Shape, slots);
        Check(binder, slots, DrinkShape.Schema);
        drink.Name = Text(binder, slots, DrinkShape.Name);
        var style = Id(binder, slots, DrinkShape.Style);
        if (style.IsGiven) drink.Style = new Given<Style>(Style.Of(style.Value), style.Span, style.Name);
        int ingredients = slots[DrinkShape.Ingredients.Index];
        drink.Ingredients = BindLines(binder, ingredients, DrinkShape.Ingredients.Value, LineShape.Shape, LineRole.Part);
        if (ingredients >= 0) drink.IngredientsSpan = binder.Tree[ingredients].Span;
        int method = slots[DrinkShape.Method.Index];
        drink.Method = BindSteps(binder, method, DrinkShape.Method.Value);
        if (method >= 0) drink.MethodSpan = binder.Tree[method].Span;
        var glass = Id(binder, slots, DrinkShape.Glass);
        drink.Glass = glass.IsGiven ? new Given<GlassType>(GlassType.Of(glass.Value), glass.Span, glass.Name) : default;
        drink.GlassWritten = glass.Or("");
        drink.Garnish = BindLines(binder, slots[DrinkShape.Garnish.Index], DrinkShape.Garnish.Value, LineShape.Loose, LineRole.Garnish);
        drink.Rim = BindLines(binder, slots[DrinkShape.Rim.Index], DrinkShape.Rim.Value, LineShape.Loose, LineRole.Rim);
        drink.Serves = binder.Number(slots[DrinkShape.Serves.Index], DrinkShape.Serves.Value);
        drink.Declares = BindDeclaration(binder, slots[DrinkShape.Declares.Index]);
        drink.AsMeasured = drink.Measured = BindMeasurement(binder, slots[DrinkShape.Measured.Index]);
        drink.Author = Text(binder, slots, DrinkShape.Author);
        drink.Date = Date(binder, slots, DrinkShape.Date);
        drink.Revision = binder.TextOrNumber(slots[DrinkShape.Revision.Index], DrinkShape.Revision.Value);
        drink.Origin = Text(binder, slots, DrinkShape.Source);
        drink.Supersedes = Id(binder, slots, DrinkShape.Supersedes);
        drink.Accept = BindAccept(binder, slots[DrinkShape.Accept.Index], DrinkShape.Accept.Value);
        drink.Notes = binder.TextOrTexts(slots[DrinkShape.Notes.Index], DrinkShape.Notes.Value);
        return drink;
    }

    private static Prep BindPrep(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var prep = new Prep { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[PrepShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, PrepShape.Shape, slots);
        Check(binder, slots, PrepShape.Schema);
        prep.Name = Text(binder, slots, PrepShape.Name);
        var family = Word(binder, slots, PrepShape.Family);
        if (family.IsGiven) prep.Family = new Given<Family>(Family.Of(family.Value), family.Span, family.Name);
        int ingredients = slots[PrepShape.Ingredients.Index];
        prep.Ingredients = BindLines(binder, ingredients, PrepShape.Ingredients.Value, LineShape.Shape, LineRole.Part);
        if (ingredients >= 0) prep.IngredientsSpan = binder.Tree[ingredients].Span;
        int method = slots[PrepShape.Method.Index];
        prep.Method = BindSteps(binder, method, PrepShape.Method.Value);
        if (method >= 0) prep.MethodSpan = binder.Tree[method].Span;
        prep.Yield = Quantity(binder, slots, PrepShape.Yield);
        prep.Target = BindTarget(binder, slots[PrepShape.Target.Index]);
        prep.AsMeasured = prep.Measured = BindMeasurement(binder, slots[PrepShape.Measured.Index]);
        prep.Keep = BindKeeping(binder, slots[PrepShape.Keep.Index]);
        prep.ByProducts = BindByProducts(binder, slots[PrepShape.ByProducts.Index]);
        prep.BatchOf = Id(binder, slots, PrepShape.BatchOf);
        BindPortions(binder, slots[PrepShape.Portions.Index], prep);
        prep.Declares = BindDeclaration(binder, slots[PrepShape.Declares.Index]);
        prep.Author = Text(binder, slots, PrepShape.Author);
        prep.Date = Date(binder, slots, PrepShape.Date);
        prep.Revision = binder.TextOrNumber(slots[PrepShape.Revision.Index], PrepShape.Revision.Value);
        prep.Origin = Text(binder, slots, PrepShape.Source);
        prep.Supersedes = Id(binder, slots, PrepShape.Supersedes);
        prep.Accept = BindAccept(binder, slots[PrepShape.Accept.Index], PrepShape.Accept.Value);
        prep.Notes = binder.TextOrTexts(slots[PrepShape.Notes.Index], PrepShape.Notes.Value);
        return prep;
    }

    private static FixedList<Line> BindLines(Binder binder, int at, ValueShape list, ObjectShape shape, LineRole role)
    {
        if (!binder.OpenList(at, list, out int count) || count == 0) return [];
        var lines = new Line[count];
        Span<int> slots = stackalloc int[shape.All.Length];
        int read = 0, number = 0;
        foreach (var item in binder.Tree[at].Items)
        {
            number++;
            if (!binder.Open(item, shape, slots)) continue;
            var given = Word(binder, slots, LineShape.Role);
            var id = Id(binder, slots, LineShape.Item);
            lines[read++] = new Line
            {
                Span = item.Span,
                Number = number,
                Item = id,
                ItemText = id.IsGiven ? default : TextOf(binder, slots[LineShape.Item.Index]),
                Amount = Quantity(binder, slots, LineShape.Amount),
                Share = Quantity(binder, slots, LineShape.Share),
                Role = given.IsGiven ? RoleOf(given.Value) : role,
                RoleIsGiven = given.IsGiven,
                Optional = Flag(binder, slots, LineShape.Optional).Or(fallback: false),
                Note = Text(binder, slots, LineShape.Note),
            };
        }

        return Cut(lines, read);
    }

    /// <summary>A text as it is written, of a value that has a finding already.</summary>
    private static Given<string> TextOf(Binder binder, int at)
    {
        if (at < 0) return default;
        var node = binder.Tree[at];
        return node.Kind == JsonKind.String ? new Given<string>(node.GetString(), node.Span, node.NameSpan) : default;
    }

    private static LineRole RoleOf(string word) => word switch
    {
        "top" => LineRole.Top,
        "rinse" => LineRole.Rinse,
        "float" => LineRole.Float,
        "rim" => LineRole.Rim,
        "wash" => LineRole.Wash,
        "fining" => LineRole.Fining,
        _ => LineRole.Muddle,
    };

    private static FixedList<Step> BindSteps(Binder binder, int at, ValueShape list)
    {
        if (!binder.OpenList(at, list, out int count) || count == 0) return [];
        var steps = new Step[count];
        Span<int> slots = stackalloc int[StepShape.Shape.All.Length];
        int read = 0, number = 0;
        foreach (var item in binder.Tree[at].Items)
        {
            number++;
            if (!binder.Open(item, StepShape.Shape, slots)) continue;
            var items = Texts(binder, slots, StepShape.Items);
            var one = Id(binder, slots, StepShape.Item);
            var verb = Id(binder, slots, StepShape.Do);
            var ice = Text(binder, slots, StepShape.Ice);
            var onIce = ice.IsGiven ? new Given<Ice>(Ice.Of(ice.Value), ice.Span, ice.Name) : default;
            Check(binder, slots, StepShape.Speed);
            steps[read++] = new Step
            {
                Span = item.Span,
                Number = number,
                Do = verb.IsGiven
                    ? new Given<Verb>(
                        onIce.Value is { IsNone: false } ? Verb.Of(verb.Value).OnIce : Verb.Of(verb.Value), verb.Span, verb.Name)
                    : default,
                Written = verb.Or(""),
                Items = !one.IsGiven ? items : items.Count == 0 ? [one] : [one, .. items],
                Ice = onIce,
                IceWritten = ice.Or(""),
                For = Quantity(binder, slots, StepShape.For),
                At = Quantity(binder, slots, StepShape.At),
                To = Quantity(binder, slots, StepShape.To),
                Until = Text(binder, slots, StepShape.Until),
                Into = Text(binder, slots, StepShape.Into),
                Vessel = Vessel(binder, slots, StepShape.Vessel),
                Amount = Quantity(binder, slots, StepShape.Amount),
                Note = Text(binder, slots, StepShape.Note),
            };
        }

        return Cut(steps, read);
    }

    private static Declaration? BindDeclaration(Binder binder, int at)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[DeclarationShape.Shape.All.Length];
        var node = binder.Tree[at];
        if (!binder.Open(node, DeclarationShape.Shape, slots)) return null;
        int allergens = slots[DeclarationShape.Allergens.Index];
        var list = Texts(binder, slots, DeclarationShape.Allergens);
        bool declared = allergens >= 0 && binder.Tree[allergens].Kind == JsonKind.Array;
        return new Declaration
        {
            Span = node.Span,
            Allergens = declared
                ? new Given<FixedList<Given<string>>>(list, binder.Tree[allergens].Span, binder.Tree[allergens].NameSpan)
                : default,
            MayContain = Texts(binder, slots, DeclarationShape.MayContain),
            Abv = Quantity(binder, slots, DeclarationShape.Abv),
            Alcohol = Quantity(binder, slots, DeclarationShape.Alcohol),
            Energy = Quantity(binder, slots, DeclarationShape.Energy),
            Claims = Texts(binder, slots, DeclarationShape.Claims),
            Advisory = Texts(binder, slots, DeclarationShape.Advisory),
        };
    }

    private static Target? BindTarget(Binder binder, int at)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[TargetShape.Shape.All.Length];
        var node = binder.Tree[at];
        if (!binder.Open(node, TargetShape.Shape, slots)) return null;
        return new Target
        {
            Span = node.Span,
            Acid = Quantity(binder, slots, TargetShape.Acid),
            Sugar = Quantity(binder, slots, TargetShape.Sugar),
            Brix = Quantity(binder, slots, TargetShape.Brix),
            Ph = Quantity(binder, slots, TargetShape.Ph),
            Abv = Quantity(binder, slots, TargetShape.Abv),
            Salt = Quantity(binder, slots, TargetShape.Salt),
            WaterActivity = Quantity(binder, slots, TargetShape.WaterActivity),
            Pressure = Quantity(binder, slots, TargetShape.Pressure),
            StandsInFor = Id(binder, slots, TargetShape.StandsInFor),
        };
    }

    private static Keeping? BindKeeping(Binder binder, int at)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[KeepingShape.Shape.All.Length];
        var node = binder.Tree[at];
        if (!binder.Open(node, KeepingShape.Shape, slots)) return null;
        return new Keeping
        {
            Span = node.Span,
            At = Quantity(binder, slots, KeepingShape.At),
            In = Vessel(binder, slots, KeepingShape.In),
            For = Quantity(binder, slots, KeepingShape.For),
            Sealed = Flag(binder, slots, KeepingShape.Sealed),
            Capacity = Quantity(binder, slots, KeepingShape.Capacity),
            Rating = Quantity(binder, slots, KeepingShape.Rating),
            Gas = Text(binder, slots, KeepingShape.Gas),
            Claim = Text(binder, slots, KeepingShape.Claim),
        };
    }

    private static FixedList<ByProduct> BindByProducts(Binder binder, int at) =>
        BindRows(binder, at, PrepShape.ByProducts.Value, ByProductShape.Shape, static (b, row, slots, _) => new ByProduct
        {
            Span = row.Span,
            Id = Id(b, slots, ByProductShape.ProductId),
            Amount = Quantity(b, slots, ByProductShape.Amount),
            Note = Text(b, slots, ByProductShape.Note),
        });

    private static void BindPortions(Binder binder, int at, Prep prep)
    {
        if (at < 0) return;
        Span<int> slots = stackalloc int[PortionsShape.Shape.All.Length];
        if (!binder.Open(binder.Tree[at], PortionsShape.Shape, slots)) return;
        prep.PortionCount = binder.Number(slots[PortionsShape.Count.Index], PortionsShape.Count.Value);
        prep.PortionSize = Quantity(binder, slots, PortionsShape.Each);
    }
}
