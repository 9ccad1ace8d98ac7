using Saltmarsh.Rules;
using SpecLint;
using SpecLint.Findings;
using SpecLint.Reading;

// A book checked by the built-in rules and the house's own. The library touches no files: it is handed their bytes.
if (args is not [string root, string day] || CalendarDate.Parse(day) is not { } on)
{
    Console.Error.WriteLine("A folder of a book and a day as YYYY-MM-DD are needed.");
    return 2;
}

var files = Directory.EnumerateFiles(root, "*.json", SearchOption.AllDirectories).Where(f => FileKinds.Of(f) is not null)
    .Select(f => new SourceFile(Path.GetRelativePath(root, f).Replace('\\', '/'), File.ReadAllBytes(f))).ToList();
var result = Checker.Check(new BookInput(files, on) { HouseRules = [new SweeterThanTheHousePours()] });
foreach (var finding in result.Findings)
    Console.WriteLine($"{finding.Place.File.Path}:{finding.Place.Start.Line}:{finding.Place.Start.Column} {finding.Rule.Id} {finding.Message}");
return result.Highest == Level.Error ? 1 : 0;
