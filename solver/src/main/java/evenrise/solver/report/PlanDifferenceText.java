package evenrise.solver.report;

import evenrise.model.answer.PlanDifference;
import evenrise.model.answer.PlanDifference.LoadChange;
import evenrise.model.answer.PlanDifference.SettingChange;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** What is another in one plan than in an earlier one, panel by panel, for a screen. */
public final class PlanDifferenceText {
    private static final int LOADS_A_PANEL = 30;

    private PlanDifferenceText() {}

    /** @param all whether long lists, and loads that differ in their time alone, are shown */
    public static List<String> lines(Plan earlier, Plan later, boolean all, Paint paint) {
        PlanDifference difference = PlanDifference.of(earlier, later);
        List<List<String>> sections = new ArrayList<>();
        sections.add(summary(difference, paint));
        figures(earlier, later, paint).ifPresent(sections::add);
        for (String panel : difference.panels()) {
            panel(panel, difference, all, paint).ifPresent(sections::add);
        }
        if (!difference.settings().isEmpty()) {
            sections.add(settings(difference.settings(), paint));
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> summary(PlanDifference difference, Paint paint) {
        long both = difference.same() + count(difference, each -> !each.isAdded() && !each.isRemoved());
        Section section = new Section(paint, "What is another")
                .text("Of " + Phrase.counted(both, "load") + " that both plans have, "
                        + count(difference, LoadChange::movesBreaker) + " sit elsewhere, "
                        + count(difference, LoadChange::movesLead) + " have another output, and "
                        + count(difference, LoadChange::isRetimed) + " come on at another time; "
                        + Phrase.counted(difference.settings().size(), "board") + " set otherwise.");
        named("New", difference, LoadChange::isAdded, section);
        named("Gone", difference, LoadChange::isRemoved, section);
        return section.lines();
    }

    private static void named(String what, PlanDifference difference, Predicate<LoadChange> which, Section section) {
        List<String> loads =
                difference.loads().stream().filter(which).map(LoadChange::load).toList();
        if (!loads.isEmpty()) {
            section.text(what + ": " + String.join(", ", loads) + ".");
        }
    }

    private static long count(PlanDifference difference, Predicate<LoadChange> which) {
        return difference.loads().stream().filter(which).count();
    }

    /** As the two files state them; where one states none, nothing is said. */
    private static Optional<List<String>> figures(Plan earlier, Plan later, Paint paint) {
        if (earlier.metrics().isEmpty() || later.metrics().isEmpty()) {
            return Optional.empty();
        }
        Metrics was = earlier.metrics().get();
        Metrics now = later.metrics().get();
        Table table = new Table()
                .words("Figure")
                .number("Was")
                .number("Now")
                .number("Change")
                .words("Unit");
        figure(table, "Peak inrush", Metrics::peakInrushAmps, "A", was, now);
        figure(table, "Imbalance of the supply", Metrics::supplyImbalancePercent, "%", was, now);
        figure(table, "Imbalance of the worst panel", Metrics::worstPanelImbalancePercent, "%", was, now);
        figure(table, "Neutral current of the supply", Metrics::supplyNeutralAmps, "A", was, now);
        figure(table, "Last switch-on", Metrics::durationSeconds, "s", was, now);
        table.row(
                "Hard rules broken",
                String.valueOf(was.hardViolations()),
                String.valueOf(now.hardViolations()),
                String.format(Locale.ROOT, "%+d", now.hardViolations() - was.hardViolations()),
                "places");
        figure(table, "Objective", Metrics::objective, "", was, now);
        return Optional.of(new Section(paint, "Figures, as the two files state them")
                .table(table)
                .lines());
    }

    private static void figure(
            Table table, String name, ToDoubleFunction<Metrics> figure, String unit, Metrics was, Metrics now) {
        double before = figure.applyAsDouble(was);
        double after = figure.applyAsDouble(now);
        table.row(name, Numbers.fixed(before, 2), Numbers.fixed(after, 2), ChangeWords.signed(after - before), unit);
    }

    private static Optional<List<String>> panel(String panel, PlanDifference difference, boolean all, Paint paint) {
        List<LoadChange> here =
                difference.loads().stream().filter(each -> each.isIn(panel)).toList();
        List<LoadChange> shown = here.stream()
                .filter(each -> all || each.isAdded() || each.isRemoved() || each.movesBreaker() || each.movesLead())
                .toList();
        if (shown.isEmpty()) {
            return Optional.empty();
        }
        Table table = new Table()
                .words("Load")
                .words("Was in")
                .words("Now in")
                .words("Was switched by")
                .words("Now by")
                .number("On, s")
                .number("Now, s");
        shown.stream()
                .limit(all ? shown.size() : LOADS_A_PANEL)
                .forEach(each -> table.row(
                        each.load(),
                        seat(each.was(), panel),
                        seat(each.now(), panel),
                        lead(each.was()),
                        lead(each.now()),
                        on(each.was()),
                        on(each.now())));
        Section section = new Section(paint, "Panel " + panel).table(table);
        if (!all && shown.size() > LOADS_A_PANEL) {
            section.text((shown.size() - LOADS_A_PANEL) + " more; --all shows them.");
        }
        return Optional.of(section.lines());
    }

    /** {@code slot 7 B}; with the panel's name where that is another. */
    private static String seat(Optional<Assignment> assignment, String panel) {
        return assignment
                .map(each -> (each.panel().equals(panel) ? "slot " : each.panel() + " ")
                        + each.slot()
                        + each.phases().stream().map(Phase::name).collect(Collectors.joining("", " ", "")))
                .map(String::strip)
                .orElse(Numbers.NONE);
    }

    private static String lead(Optional<Assignment> assignment) {
        return assignment
                .flatMap(each -> each.board()
                        .map(board -> board
                                + (each.output().isPresent()
                                        ? " " + each.output().getAsInt()
                                        : "")))
                .orElse(Numbers.NONE);
    }

    private static String on(Optional<Assignment> assignment) {
        return assignment.map(each -> Numbers.seconds(each.onSeconds())).orElse(Numbers.NONE);
    }

    private static List<String> settings(List<SettingChange> changes, Paint paint) {
        Table table = new Table().words("Board").words("Was set to").words("Now");
        changes.forEach(each -> table.row(each.board(), words(each.was()), words(each.now())));
        return new Section(paint, "Boards").table(table).lines();
    }

    private static String words(Optional<BoardSetting> setting) {
        return setting.map(each -> each.startDelaySeconds().isEmpty()
                        ? "a time for each output"
                        : "delay " + Numbers.seconds(each.startDelaySeconds()) + " s, step "
                                + Numbers.seconds(each.stepSeconds()) + " s")
                .orElse(Numbers.NONE);
    }
}
