package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What a finished plan comes to, for a screen. */
public final class SummaryText {
    private static final int PLACES_A_RULE = 5;
    private static final int NODES = 20;
    private static final int LOADS_BY_NAME = 8;

    private SummaryText() {}

    /**
     * @param findings what the project itself makes impossible
     */
    public static List<String> lines(Evaluation evaluation, List<String> findings, SearchFacts search, Paint paint) {
        Verdict verdict = evaluation.verdict();
        List<List<String>> sections = new ArrayList<>();
        sections.add(AssessmentText.lines(evaluation.assessment(), paint));
        sections.add(title(evaluation, search, paint));
        if (!findings.isEmpty()) {
            Section section = new Section(paint, "What no plan of this project can keep");
            findings.forEach(section::item);
            sections.add(section.lines());
        }
        sections.add(KeyFigures.lines(evaluation, LOADS_BY_NAME, paint));
        sections.addAll(PlantText.sections(evaluation.layout(), NODES, paint));
        sections.add(BrokenRules.folded(verdict.violations(), evaluation.project(), PLACES_A_RULE, paint));
        if (!verdict.violations().isEmpty() && findings.isEmpty()) {
            sections.add(new Section(paint, "What may help")
                    .text("Nothing shows that the rules cannot be kept. Maybe search longer, with another seed, or"
                            + " from this plan.")
                    .lines());
        }
        List<String> overLimit = OverLimitText.lines(evaluation, paint);
        if (!overLimit.isEmpty()) {
            sections.add(overLimit);
        }
        sections.add(ReviewText.counts(evaluation.review(), paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> title(Evaluation evaluation, SearchFacts search, Paint paint) {
        Project project = evaluation.project();
        Map<String, Integer> outputs =
                project.boardTypes().stream().collect(Collectors.toMap(BoardType::id, BoardType::outputs, (a, b) -> a));
        long switched = project.loads().stream().filter(Load::switched).count();
        int reachable = project.boards().stream()
                .mapToInt(board -> outputs.getOrDefault(board.type(), 0))
                .sum();
        Section title = new Section(paint, "Plan for " + DisplayWidth.cut(project.name(), 60))
                .text(Phrase.counted(project.loads().size(), "load") + ", " + switched + " of them switched; "
                        + Phrase.counted(project.panels().size(), "panel") + "; "
                        + Phrase.counted(project.boards().size(), "board") + " with "
                        + Phrase.counted(reachable, "output") + ".")
                .text((search.wasInterrupted() ? "Interrupted; the best plan so far is kept. " : "")
                        + searched(search));
        search.endedEarly().ifPresent(why -> title.text("Ended before its time: " + why + "."));
        search.outlook().ifPresent(title::text);
        MovedText.of(evaluation).ifPresent(title::text);
        GuessedField.counted(project)
                .ifPresent(count -> title.text("Guessed: " + count + "; 'evenrise audit --guessed' lists them."));
        return title.lines();
    }

    private static String searched(SearchFacts search) {
        String first = search.firstFeasibleSeconds().isPresent()
                ? " First plan without a broken rule after " + Numbers.seconds(search.firstFeasibleSeconds()) + " s."
                : "";
        return "Searched " + Numbers.fixed(search.seconds(), 1) + " s, " + Phrase.counted(search.threads(), "thread")
                + ", seed " + search.seed() + ", " + Numbers.count(search.moves()) + " moves, "
                + Numbers.count(Math.round(search.moves() / Math.max(0.001, search.seconds()))) + " a second." + first;
    }
}
