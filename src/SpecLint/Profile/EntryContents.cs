using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What an entry may say that it holds.</summary>
internal static class EntryContents
{
    /// <summary>The path of each value with the component that it is, those of the table of contents of an entry.</summary>
    public static FixedList<(string Path, Component Component)> Paths { get; } =
    [
        ("sugars.sucrose", Component.Sucrose), ("sugars.glucose", Component.Glucose), ("sugars.fructose", Component.Fructose),
        ("sugars.lactose", Component.Lactose), ("sugars.maltose", Component.Maltose), ("sugars.dextrin", Component.Dextrin),
        ("sugars.allulose", Component.Allulose),
        ("polyols.glycerol", Component.Glycerol), ("polyols.sorbitol", Component.Sorbitol),
        ("polyols.xylitol", Component.Xylitol), ("polyols.erythritol", Component.Erythritol), ("polyols.maltitol", Component.Maltitol),
        ("acids.citric", Component.Citric), ("acids.malic", Component.Malic), ("acids.tartaric", Component.Tartaric),
        ("acids.lactic", Component.Lactic), ("acids.acetic", Component.Acetic), ("acids.phosphoric", Component.Phosphoric),
        ("acids.succinic", Component.Succinic), ("acids.ascorbic", Component.Ascorbic), ("acids.oxalic", Component.Oxalic),
        ("acids.fumaric", Component.Fumaric), ("acids.quinic", Component.Quinic), ("acids.gluconic", Component.Gluconic),
        ("acids.benzoic", Component.Benzoic), ("acids.sorbic", Component.Sorbic), ("carbonDioxide", Component.CarbonDioxide),
        ("salt", Component.SodiumChloride), ("sodium", Component.Sodium), ("potassium", Component.Potassium),
        ("calcium", Component.Calcium), ("magnesium", Component.Magnesium), ("chloride", Component.Chloride), ("sulphate", Component.Sulphate),
        ("protein", Component.Protein), ("fat", Component.Fat), ("fibre", Component.Fibre),
    ];
}
