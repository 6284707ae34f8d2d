package evenrise.solver.document;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assessment;
import java.util.ArrayList;
import java.util.List;

/**
 * What sheets for site say in one language: the figures of a document, and what of it stands in words.
 *
 * @param schedules of the panels, in that language
 * @param directory made of them
 * @param motorsNote how motors are tested
 */
public record SiteDocument(
        Document document,
        SheetWords words,
        List<Schedule> schedules,
        DocumentTable<DirectoryLine> directory,
        String motorsNote) {
    public SiteDocument {
        schedules = List.copyOf(schedules);
    }

    /** In the language of all other documents. */
    public static SiteDocument of(Document document) {
        return new SiteDocument(
                document,
                SheetWords.in(SheetLanguage.EN),
                document.schedules(),
                document.tables().directory(),
                document.tables().motors().map(DocumentTable::note).orElse(""));
    }

    /** @param evaluation that the document was made from */
    public static SiteDocument of(Document document, Evaluation evaluation, SheetWords words) {
        List<Schedule> schedules = new Schedules(evaluation.layout(), evaluation.review(), words).all();
        return new SiteDocument(
                document,
                words,
                schedules,
                DirectoryLine.table(schedules, words),
                CircuitTables.motorsNote(evaluation.layout().project(), words));
    }

    /** What all judges say, by counts. */
    public String verdict() {
        Assessment all = document.assessment();
        List<String> said = new ArrayList<>();
        said.add(
                all.isBroken()
                        ? words.say("verdict.broken", all.hardRulesBroken(), all.limitsBroken())
                        : words.say("verdict.kept", all.checksMade(), all.checksMade() + all.checksNotMade()));
        said(said, "verdict.events", all.eventsOverLimit());
        said(said, "verdict.guessed", all.guessedFields());
        said(said, "verdict.no-inrush", all.loadsWithoutInrush());
        said(said, "verdict.no-place", all.loadsWithoutPlace());
        return String.join(" ", said);
    }

    private void said(List<String> all, String key, int count) {
        if (count > 0) {
            all.add(words.say(key, count));
        }
    }
}
