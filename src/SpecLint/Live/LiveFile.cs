using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Live;

/// <summary>A file of a live book, with what is known of it so far.</summary>
internal sealed class LiveFile(BookFile file, string[] mentions)
{
    /// <summary>The file as it is now.</summary>
    public BookFile File { get; set; } = file;

    /// <summary>Its path.</summary>
    public string Path => File.Source.Path;

    /// <summary>The ids in its text.</summary>
    public string[] Mentions { get; set; } = mentions;

    /// <summary>What its check looked at beside itself and what it mentions.</summary>
    public IReadOnlyCollection<BookRead> Reads { get; set; } = [];

    /// <summary>What the rules about single files found in it.</summary>
    public List<Finding> Found { get; set; } = [];
}
