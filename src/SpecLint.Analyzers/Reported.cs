using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers;

/// <summary>A place in a file, in characters, held without the file's text.</summary>
/// <param name="Path">Path of the file as the compiler knows it.</param>
/// <param name="Span">The characters.</param>
/// <param name="Lines">Their lines and columns, from 0.</param>
internal sealed record PlaceInFile(string Path, Microsoft.CodeAnalysis.Text.TextSpan Span, LinePositionSpan Lines)
{
    /// <summary>The place as the compiler wants it.</summary>
    public Location ToLocation() => Location.Create(Path, Span, Lines);
}

/// <summary>A finding, ready to be reported; it holds on to nothing of the book.</summary>
/// <param name="Id">Id of the rule.</param>
/// <param name="Level">Level in force.</param>
/// <param name="Message">What is wrong and what to do.</param>
/// <param name="Where">Where.</param>
/// <param name="Further">Further places.</param>
/// <param name="Fingerprint">The library's fingerprint of the finding.</param>
internal sealed record Reported(string Id, Level Level, string Message, PlaceInFile Where, ImmutableArray<PlaceInFile> Further, string Fingerprint);
