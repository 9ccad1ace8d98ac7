using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>First room: the lines of a recipe, resolved, weighed and put together.</summary>
internal static class Weighing
{
    private static readonly Limit NegligibleShare = Limits.Of("tolerance-negligible-share");
    private static readonly Limit ProteinBuffer = Limits.Of("tolerance-protein-buffer");
    private static readonly Limit ExtractedShare = Limits.Of("tolerance-extracted-share");
    private static readonly Limit BufferShare = Limits.Of("tolerance-buffer-share");

    /// <summary>What a part is made of that resolves to nothing.</summary>
    internal static readonly Material Unresolved = ProfileSet.Nothing("", "it is in no file of the book and not in the catalogue");

    /// <summary>The lines of a recipe, resolved and weighed.</summary>
    public static FixedList<Part> PartsOf(Recipe recipe, ProfileSet set)
    {
        var phases = new PartPhases(recipe);
        var lines = LinkedBook.LinesOf(recipe);
        var parts = new Part[lines.Count];
        int count = 0;
        foreach (var line in lines)
        {
            var item = line.Item.IsGiven ? set.Book.Resolve(line.Item.Value) : null;
            var material = item is null ? null : set.MaterialOfPart(item);
            var grams = new Trace(double.NaN, double.NaN, double.NaN);
            double millilitres = double.NaN;
            if (line.Amount.IsGiven) (grams, millilitres, _) = Amounts.Weigh(line.Amount.Value, material ?? Unresolved, set.Book.Settings);
            parts[count++] = new Part
            {
                Line = line,
                Item = item,
                Material = material,
                Grams = grams,
                Millilitres = millilitres,
                Phase = phases.Of(line, material),
            };
        }

        return parts;
    }

    /// <summary>The parts of the mix together, before anything is done to them.</summary>
    public static Composed Combine(Recipe recipe, FixedList<Part> parts, ProfileRoom? room)
    {
        var unknown = Unknowns.None;
        List<string>? reasons = null;
        double weighed = 0, acids = 0;
        int inputs = 2;
        foreach (var part in parts)
        {
            if (part.Phase is not PartPhase.Mix || !part.IsWeighed) continue;
            weighed += part.Grams.Typical;
            if (part.Material is null) continue;
            acids += AcidShare(part.Material) * part.Grams.Typical;
            inputs += part.Material.Inputs.Length + 1;
        }

        Lacks? lacks = null;
        var mix = new Mix(Math.Min(inputs, 4 * Condensing.Most), room);
        foreach (var part in parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.TakenOut)) continue;
            string name = part.Line.Item.IsGiven ? part.Line.Item.Value : $"part {part.Line.Number}";
            if (!part.IsWeighed)
            {
                // A leaf or two in a drink weighs nothing that a fact could show.
                if (part.Phase == PartPhase.TakenOut && recipe is Drink) continue;
                if (part.Line.Amount.IsGiven
                    && part.Material is not null
                    && part.Line.Amount.Value.Dimension == Dimension.Count
                    && part.Material.Kind.IsBotanical)
                    continue;
                if ((unknown & Unknowns.Mass) == 0) (reasons ??= []).Add($"how much {name} weighs is not known");
                unknown |= Unknowns.Mass;
                continue;
            }

            var material = part.Material ?? Unresolved;
            var missing = material.Unknown == Unknowns.None ? Unknowns.None : MissingOf(part, material, lacks ??= new Lacks(parts, weighed), weighed, acids);
            if (missing != Unknowns.None)
            {
                unknown |= missing;
                (reasons ??= []).Add(part.Material is null ? $"{name} is not known" : material.UnknownBecause);
            }

            if (part.Phase == PartPhase.Mix) mix.Add(material, part.Grams, name);
            else Extraction.Into(mix, material, part, name);
        }

        if (parts.Count == 0)
        {
            unknown |= Unknowns.Composition;
            reasons = ["nothing says what is in it"];
        }

        mix.Condense();
        return new Composed(mix, new Lack(unknown, reasons is null ? "" : Lack.Join(reasons)));
    }

    /// <summary>What is not known of a part, as far as the whole feels it. What is written in several lines counts together.</summary>
    private static Unknowns MissingOf(Part part, Material material, Lacks lacks, double weighed, double acids)
    {
        double grams = lacks.GramsOf(material, part.Phase);
        var missing = part.Phase == PartPhase.Mix ? material.Unknown
            : grams > weighed * ExtractedShare.Value / 100 ? material.Unknown & (Unknowns.Ph | Unknowns.Acid | Unknowns.Sugar | Unknowns.Composition)
            : Unknowns.None;
        if (IsNegligible(grams, weighed)) missing &= lacks.Together;

        // A spirit's own pH says nothing of a sour: it counts where the part brings acid or protein that buffers.
        return (missing & Unknowns.Ph) != 0 && !Buffers(material, grams, acids) ? missing & ~Unknowns.Ph : missing;
    }

    private static bool IsNegligible(double grams, double weighed) => weighed > 0 && grams < weighed * NegligibleShare.Value / 100;

    /// <summary>What the parts of which something is not known come to, each thing once, and all together.</summary>
    private sealed class Lacks
    {
        private const int Flags = 9;
        private readonly Dictionary<(Material, PartPhase), double> grams = [];

        public Lacks(FixedList<Part> parts, double weighed)
        {
            foreach (var part in parts)
            {
                if (part.Phase is not (PartPhase.Mix or PartPhase.TakenOut) || !part.IsWeighed) continue;
                var key = (part.Material ?? Unresolved, part.Phase);
                if (key.Item1.Unknown == Unknowns.None) continue;
                grams.TryGetValue(key, out double known);
                grams[key] = known + part.Grams.Typical;
            }

            // Many trifles of which the same is not known are none together.
            Span<double> trifles = stackalloc double[Flags];
            trifles.Clear();
            foreach (var one in grams)
            {
                if (!IsNegligible(one.Value, weighed)) continue;
                for (int flag = 0; flag < Flags; flag++)
                {
                    if (((int)one.Key.Item1.Unknown & (1 << flag)) != 0) trifles[flag] += one.Value;
                }
            }

            for (int flag = 0; flag < Flags; flag++)
            {
                if (trifles[flag] > 0 && !IsNegligible(trifles[flag], weighed)) Together |= (Unknowns)(1 << flag);
            }
        }

        /// <summary>What is not known of so many trifles that the whole feels it.</summary>
        public Unknowns Together { get; }

        /// <summary>How much there is of a thing, in all its lines, g.</summary>
        public double GramsOf(Material material, PartPhase phase) => grams[(material, phase)];
    }

    private static double AcidShare(Material material)
    {
        double share = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) share += material.Of(c);
        return share;
    }

    private static bool Buffers(Material material, double grams, double acids) =>
        AcidShare(material) * grams > acids * BufferShare.Value / 100 || material.Of(Component.Protein) * 100 > ProteinBuffer.Value
        || (acids == 0 && !material.Kind.IsAcidFree);
}
