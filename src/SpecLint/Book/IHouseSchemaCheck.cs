using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>Checks files against the schemas that a bar adds of its own (<c>schemas</c> in <c>bar.json</c>).</summary>
/// <remarks>
/// The library only knows this door: a full implementation of JSON Schema is at home in the tool, and is loaded when a bar
/// asks for it.
/// </remarks>
public interface IHouseSchemaCheck
{
    /// <summary>Checks a file; answers what its kind's schema asks for and the file lacks, in the order of the text.</summary>
    /// <param name="file">The file; one that is no JSON has been reported already, and is passed over.</param>
    IReadOnlyList<ReadingProblem> Check(BookFile file);
}
