using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What passes between a solid that is strained out and the liquid.</summary>
internal static class Extraction
{
    private static readonly Limit Typical = Limits.Of("tolerance-extraction-typical");
    private static readonly Limit Low = Limits.Of("tolerance-extraction-low");

    /// <summary>Adds what a part that is taken out leaves in the liquid: some of its juice; of a wash its water and what is dissolved.</summary>
    public static void Into(Mix mix, Material material, Part part, string name)
    {
        if (part.Line.Role == LineRole.Fining) return;
        var juice = new double[Components.Count];
        double mass = 0;
        for (var c = Component.Water; c <= Components.LastSolute; c++) mass += juice[(int)c] = material.Of(c);
        mass += juice[(int)Component.OtherDissolved] = material.Of(Component.OtherDissolved);
        if (mass <= 0) return;
        for (int c = 0; c < juice.Length; c++) juice[c] /= mass;
        var inputs = new UncertainInput[material.Inputs.Length];
        Span<double> change = stackalloc double[Components.Count];
        for (int i = 0; i < inputs.Length; i++)
        {
            change.Clear();
            material.Inputs[i].Changes.AddTo(change, 1 / mass);
            for (int c = 0; c < change.Length; c++)
            {
                if (!(juice[c] > 0)) change[c] = 0;
            }

            inputs[i] = material.Inputs[i].With(SparseMasses.Of(change));
        }

        double typical = part.Line.Role == LineRole.Wash ? 1 : Typical.Value / 100, low = part.Line.Role == LineRole.Wash ? 0.8 : Low.Value / 100;

        // What dissolves goes along: caffeine of a leaf or a bean is in the cup, as much of it as of its juice, or all.
        Trace Given(Trace of) => new(of.Typical / mass, of.Low * low / typical / mass, of.High / typical / mass);
        var traces = material.Traces;
        var liquor = new Material(
            material.Id, juice, inputs, 1, MaterialState.Liquid)
        {
            Traces = new Traces(
                Given(traces.Caffeine), Given(traces.Quinine), Given(traces.Sulphite))
        };
        mix.Add(liquor, new Trace(part.Grams.Typical * mass * typical, part.Grams.Low * mass * low, part.Grams.High * mass), name, material.Composition);
    }

    /// <summary>The material of what is left of making a recipe: the insoluble matter of its parts, and the liquid it holds.</summary>
    public static Material Left(ByProduct left, FixedList<Part> parts, Lack lack)
    {
        string id = left.Id.Value;
        if (!left.Amount.IsGiven || left.Amount.Value.Dimension != Reading.Dimension.Mass || left.Amount.Value.Base <= 0)
            return ProfileSet.Nothing(id, "its amount is not given by mass");

        var inputs = new Mix();
        double apart = 0;
        foreach (var part in parts)
        {
            if (part is not { Phase: PartPhase.Mix or PartPhase.TakenOut, IsWeighed: true, Material: { } material }) continue;
            inputs.Add(material, part.Grams, material.Id);
            apart += part.Grams.Typical / material.Density;
        }

        double solid = inputs.Of(Component.OtherInsoluble) + inputs.Of(Component.Fibre);
        double mass = left.Amount.Value.Base;
        double liquid = inputs.Total - solid;

        // Where nothing can be strained out, what is left is more of the same; what no model has the volume of, oils, fills what each part does.
        if (solid < 0.01 * mass && inputs.Total > 0)
            return inputs.ToMaterial(
                id, inputs.Total / (Mixture.Volume(inputs.Grams, Celsius.Reference)?.Value ?? apart), MaterialState.Liquid,
                ItemKind.ByProduct, lack, new Trace(double.NaN, double.NaN, double.NaN));
        if (solid < 0.01 * mass || solid >= mass || liquid <= 0)
            return ProfileSet.Nothing(id, "what was strained out cannot be worked out from the parts");
        double held = (mass - solid) / liquid;
        for (int c = 0; c < Components.Count; c++)
        {
            if ((Component)c is not (Component.OtherInsoluble or Component.Fibre)) inputs.Keep((Component)c, held);
        }

        return inputs.ToMaterial(id, double.NaN, MaterialState.Solid, ItemKind.ByProduct, lack, new Trace(double.NaN, double.NaN, double.NaN));
    }
}
