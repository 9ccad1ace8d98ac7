using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6023", "hazard-unanswered", "A part is harmful unless a condition is met, and nothing says that it is", Level.Warning,
    Safety = true)]
internal sealed partial class HazardUnanswered : RecipeRule
{
    private const string Smoke = "wood-smoke";

    public override void Check(RecipeContext context)
    {
        bool wood = false;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Asks is not { } ask) continue;
            wood |= load.Hazard.Id == Smoke;
            string? refused = Refused(load.Part.Line.Note, ask);
            if (refused is null && IsAnswered(context, load, ask.Answers)) continue;
            string said = refused is null ? $"nothing says {ask.What}" : $"its note says \"{refused}\"";
            context.Report(new(Rule)
            {
                Answer = refused is null ? Answer.NotShown : Answer.Broken,
                AskedLevel = refused is null ? ask.Level : Level.Warning,
                At = context.ItemOf(load.Part.Line),
                Key = load.Hazard.Id,
                Message = $"`{load.Id}` is a hazard{HazardWords.HarmOf(load.Hazard)}, and {said} ({SourceOf(load.Hazard)}).",
                Advice = $"Write in the line's note, or once in the notes of the ingredient's file, {ask.What}. Otherwise take it out.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load)],
            });
        }

        if (!wood && HazardTable.Find(Smoke) is { Asks: { } asked } smoke) CheckSmoke(context, smoke, asked);
    }

    /// <summary>A step that smokes: what smoulders is an item of the recipe, or its note says what it is.</summary>
    private static void CheckSmoke(RecipeContext context, Hazard smoke, HazardAsk ask)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Verb.Smokes) continue;
            string? refused = Refused(step.Note, ask);
            bool answered = step.Items.Count > 0 || (step.Note.IsGiven && Phrases.Affirms(step.Note.Value, ask.Answers));
            if (refused is null && answered) continue;
            context.Report(new(Rule)
            {
                Answer = refused is null ? Answer.NotShown : Answer.Broken,
                AskedLevel = refused is null ? ask.Level : Level.Warning,
                At = refused is null ? context.VerbOf(step) : context.At(step.Note.Span, context.PathOf(step) + ".note"),
                Key = smoke.Id,
                Message = refused is null
                    ? $"It is smoked, and nothing says {ask.What} ({SourceOf(smoke)})."
                    : $"It is smoked over something that the note calls \"{refused}\": such wood leaves tar, resin or chemicals in the "
                        + $"drink ({SourceOf(smoke)}).",
                Advice = "Use untreated hardwood that is sold for smoking food, or a herb or spice, and write it in the step's note.",
                Caution = HazardWords.Caution,
                Evidence = [Proof.Of("smoke", step.Note.Or(step.Written))],
            });
            return;
        }
    }

    private static string SourceOf(Hazard hazard) => hazard.Rules.Count > 0 ? hazard.Rules[0].Source : "from memory";

    /// <summary>The word of a note that answers the wrong way; <see langword="null"/> where there is none.</summary>
    private static string? Refused(Given<string> note, HazardAsk ask)
    {
        if (!note.IsGiven) return null;
        foreach (string word in ask.Refuses)
        {
            if (Phrases.Has(note.Value, word) && Phrases.Affirms(note.Value, [word])) return word;
        }

        return null;
    }

    /// <summary>Whether the note of the line, the notes of the ingredient's file or its name say it, and do not deny it.</summary>
    private static bool IsAnswered(RecipeContext context, HazardLoad load, FixedList<string> answers)
    {
        if (Says(load.Part.Line.Note)) return true;
        foreach (var told in context.Recipe.Declares?.Advisory ?? [])
        {
            if (Says(told)) return true;
        }

        if (load.Part.Item is { IsBuiltIn: false, File: Ingredient own })
        {
            if (Says(own.Name)) return true;
            foreach (var note in own.Notes)
            {
                if (Says(note)) return true;
            }
        }

        // What is in no file says it in its own words: "tinned kidney beans".
        if (load.Part.Item is null && Phrases.Affirms(load.Id.Replace('-', ' '), answers)) return true;

        // Heat in the pot, after it went in, cooks it.
        return load.Hazard.Asks!.Heat && (!CookedThrough.IsPlain(load.Part) || CookedThrough.Is(context, load.Part.Line));

        bool Says(Given<string> text) => text.IsGiven && Phrases.Affirms(text.Value, answers);
    }
}
