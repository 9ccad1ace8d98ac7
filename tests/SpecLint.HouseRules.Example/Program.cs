using Saltmarsh.Rules;
using SpecLint;
using SpecLint.Binding;
using SpecLint.Reading;
using SpecLint.Vocabulary;

// A book checked by the built-in rules and the house's own. The library touches no files: it is handed their bytes.
if (args is not [string root, string day] || CalendarDate.Parse(day) is not { } on)
{
    Console.Error.WriteLine("A folder of a book and a day as YYYY-MM-DD are needed.");
    return 2;
}

var listing = Directory.EnumerateFiles(root, "*.json", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f));
var files = BookFiles.Read(listing, path => File.ReadAllBytes(Path.Combine(root, path)));
var result = Checker.Check(new BookInput(files, on) { HouseRules = [new SweeterThanTheHousePours()] });
foreach (var finding in result.Findings)
    Console.WriteLine($"{finding.Place.File.Path}:{finding.Place.Start.Line}:{finding.Place.Start.Column} {finding.Rule.Id} {finding.Message}");
return result.Highest == Level.Error ? 1 : 0;
