package evenrise.solver.document;

import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What feeds what, what one command each switches, and what runs when. */
final class PlantTables {
    private static final String DISTRIBUTION =
            "Top down. Running current: rms, the sum of magnitudes on the phase that runs highest, beside what is allowed;"
                    + " behind a transformer at the secondary's voltage. Full use: every load at its running current,"
                    + " whatever the scenes. Peak: instantaneous, by the envelopes at nominal voltage, while systems"
                    + " start. An empty limit: the project states none.";

    private static final String STARTS =
            "Crest at nominal voltage on the worst phase. Start: the system alone, its envelopes summed. In use: what it"
                    + " draws at its largest use in any scene, or idling. Beside it: ";

    private static final String SCENES =
            "The place that each scene uses most: running current of its highest phase over what is allowed, and its"
                    + " neutral likewise. A place that is within its limits in scenes alone rests on what is stated as"
                    + " their basis.";

    private final Layout layout;

    PlantTables(Layout layout) {
        this.layout = layout;
    }

    /** None where the supply feeds every panel. */
    Optional<DocumentTable<DistributionRow>> distribution() {
        if (layout.project().nodes().isEmpty()
                && layout.project().panels().stream()
                        .allMatch(panel -> panel.fedFrom().isEmpty())) {
            return Optional.empty();
        }
        List<Phase> phases = NodeTables.phases(layout);
        boolean hasScenes = !layout.project().scenes().isEmpty();
        List<Column<DistributionRow>> columns = new ArrayList<>(List.of(
                Column.text("node", "Place", row -> row.node().node()),
                Column.text("kind", "Kind", DistributionRow::kind),
                Column.text("from", "Fed from", DistributionRow::fedFrom),
                Column.text("system", "System", DistributionRow::system),
                Column.number("rated", "Rated", "A", DistributionRow::ratedAmps),
                Column.text("transformer", "Transformer", DistributionRow::transformer),
                Column.text("wiring", "Before it", DistributionRow::wiring)));
        phases.forEach(phase -> columns.add(Column.number(
                "running" + phase,
                "Running phase " + phase,
                "A",
                NodeTables.of(row -> row.node().runningAmps(), phase),
                "")));
        columns.add(Column.number("allowed", "Allowed", "A", row -> row.node().runningLimitAmps()));
        columns.add(Column.number("used", "Used", "%", DistributionRow::usedPercent));
        if (hasScenes) {
            phases.forEach(phase -> columns.add(Column.number(
                    "full" + phase,
                    "Full use phase " + phase,
                    "A",
                    NodeTables.of(DistributionRow::fullUse, phase),
                    "")));
            columns.add(Column.number("fullUsed", "Full use", "%", DistributionRow::fullUsedPercent));
        }
        columns.add(Column.number("kva", "Full use", "kVA", DistributionRow::fullUseKva));
        columns.add(Column.number("neutral", "Neutral", "A", row -> row.node().neutralAmps()));
        if (hasScenes) {
            columns.add(Column.number("fullNeutral", "Neutral, full use", "A", DistributionRow::fullNeutralAmps));
        }
        columns.add(Column.number(
                "neutralAllowed", "Neutral allowed", "A", row -> row.node().neutralLimitAmps()));
        columns.add(Column.number("peak", "Peak", "A", row -> row.node().greatestPeakAmps()));
        columns.add(Column.number(
                "peakAllowed", "Peak allowed", "A", row -> row.node().inrushLimitAmps(), ""));
        return Optional.of(DocumentTable.of(
                "distribution", "Distribution: what feeds what", DISTRIBUTION, columns, DistributionRow.of(layout)));
    }

    /** None where one command switches all. */
    Optional<DocumentTable<SystemRow>> systems() {
        return layout.project().systems().isEmpty()
                ? Optional.empty()
                : Optional.of(DocumentTable.of(
                        "systems",
                        "Systems: what one start signal each switches",
                        overlap(),
                        List.of(
                                Column.text("system", "System", row -> row.use().system()),
                                Column.text(
                                        "needs",
                                        "On before it",
                                        row -> String.join(", ", row.use().needs())),
                                Column.count(
                                        "loads",
                                        "Loads switched",
                                        row -> row.use().loads()),
                                Column.number(
                                        "end",
                                        "To the last switch-on",
                                        "s",
                                        row -> row.use().lastOnSeconds()),
                                Column.text("boards", "Boards", row -> String.join(", ", row.boards()))),
                        SystemRow.of(layout)));
    }

    private String overlap() {
        return switch (layout.project().overlap()) {
            case TOGETHER -> "One start signal starts all of them, on one clock: times count from it.";
            case ONE_AT_A_TIME ->
                "Each has a start signal of its own, and times count from it. One starts at a time, while the"
                        + " others may be in use.";
            case ANY ->
                "Each has a start signal of its own, and times count from it. Any of them may start at any time.";
        };
    }

    /** None where all start on one clock. */
    Optional<DocumentTable<StartRow>> starts() {
        if (!layout.project().hasClocks()) {
            return Optional.empty();
        }
        boolean isAny = layout.project().overlap() == Overlap.ANY;
        return Optional.of(DocumentTable.of(
                "starts",
                "Starts: what each place carries as each system starts",
                STARTS
                        + (isAny
                                ? "what is always on, and every other system, starting or in use, whichever is more."
                                : "what is always on, and every other system in use."),
                List.of(
                        Column.text("node", "Place", StartRow::node),
                        Column.text("system", "System", StartRow::system),
                        Column.text("phase", "Phase", row -> row.peak().phase().name()),
                        Column.number("start", "Start", "A", StartRow::startingAmps),
                        Column.number("at", "At", "s", row -> row.peak().atSeconds()),
                        Column.number("use", "In use", "A", StartRow::inUseAmps),
                        Column.number("rest", "Beside it", "A", StartRow::restAmps),
                        Column.number("most", "Together", "A", StartRow::mostAmps)),
                StartRow.of(layout)));
    }

    /** None where a project states no scene. */
    Optional<DocumentTable<SceneRow>> scenes() {
        return layout.project().scenes().isEmpty()
                ? Optional.empty()
                : Optional.of(DocumentTable.of(
                        "scenes",
                        "Scenes: what runs when",
                        SCENES,
                        List.of(
                                Column.text("scene", "Scene", SceneRow::scene),
                                Column.number(
                                        "weight",
                                        "Weight",
                                        "",
                                        row -> row.loading().weight(),
                                        ""),
                                Column.text("factors", "Part of running current", SceneRow::factors),
                                Column.text("basis", "Basis", SceneRow::basis),
                                Column.text(
                                        "node",
                                        "Used most",
                                        row -> row.loading().node()),
                                Column.number(
                                        "used",
                                        "Used",
                                        "%",
                                        row -> row.loading().usedPercent()),
                                Column.text("neutralNode", "Neutral used most", SceneRow::neutralNode),
                                Column.number("neutral", "Neutral used", "%", SceneRow::neutralPercent)),
                        SceneRow.of(layout)));
    }
}
