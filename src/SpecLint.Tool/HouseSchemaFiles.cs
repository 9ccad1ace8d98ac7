using System.Runtime.CompilerServices;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>Reads the schemas that a bar names. The engine that runs them is not touched where it names none.</summary>
internal static class HouseSchemaFiles
{
    /// <summary>The schemas of a bar; <see langword="null"/> where it names none.</summary>
    /// <param name="root">Root of the book.</param>
    /// <param name="bar">The bar.</param>
    /// <exception cref="UsageException">A schema cannot be read or run.</exception>
    public static IHouseSchemaCheck? Load(string root, Bar? bar) => bar is null || bar.Schemas.Count == 0 ? null : LoadEach(root, bar);

    /// <summary>In a method of its own, so that a run without schemas never loads the engine.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static HouseSchemas LoadEach(string root, Bar bar)
    {
        var schemas = new HouseSchemas();
        foreach (var entry in bar.Schemas.OrderBy(s => s.Key, StringComparer.Ordinal))
        {
            if (KindOf(entry.Key) is not { } kind) continue;
            string path = entry.Value.Value;
            string full = Path.GetFullPath(Path.Combine(root, path));
            if (Path.IsPathRooted(path)
                || !full.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, StringComparison.Ordinal)
                || !Links.LeadsWithin(Links.RealPath(root), full))
                throw new UsageException($"the schema {path} that bar.json names is outside the book.");
            string? trouble;
            try
            {
                byte[] bytes = InputFile.Read(full, BookFolder.LargestFile)
                    ?? throw new UsageException($"the schema {path} that bar.json names is larger than 4 MiB.");
                trouble = schemas.Add(kind, new SourceFile(path, bytes));
            }
            catch (Exception e) when (IoFault.Is(e))
            {
                throw new UsageException($"the schema {path} that bar.json names cannot be read: {IoFault.Reason(e)}.", e);
            }

            if (trouble is not null) throw new UsageException(trouble);
        }

        return schemas;
    }

    private static FileKind? KindOf(string name) => name switch
    {
        "bar" => FileKind.Bar,
        "drink" => FileKind.Drink,
        "prep" => FileKind.Prep,
        "ingredient" => FileKind.Ingredient,
        "menu" => FileKind.Menu,
        "stock" => FileKind.Stock,
        "prices" => FileKind.Prices,
        _ => null,
    };
}
