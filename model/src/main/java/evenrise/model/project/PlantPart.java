package evenrise.model.project;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A part of a plant beyond one supply with panels, one command and boards of one start delay and one step. The referee
 * judges all of them; whatever does not understand one yet asks here, and says so.
 */
public enum PlantPart {
    NODES("nodes", project -> !project.nodes().isEmpty()),
    FED_FROM(
            "panels' fed_from",
            project -> project.panels().stream().map(Panel::fedFrom).anyMatch(Optional::isPresent)),
    SYSTEMS(
            "systems",
            project -> !project.systems().isEmpty()
                    || project.boards().stream().map(Board::system).anyMatch(Optional::isPresent)),
    SCENES("scenes", project -> !project.scenes().isEmpty()),
    SPARE(
            "spare",
            project -> project.spare().isPresent()
                    || project.panels().stream().map(Panel::spare).anyMatch(Optional::isPresent)
                    || anyType(project, type -> type.spareOutputs() > 0)),
    TIMES("boards of timing each", project -> anyType(project, type -> type.timing() == BoardTiming.EACH)),
    PASSES_ON(
            "boards that pass on after all outputs",
            project -> anyType(project, type -> type.passesOn() == PassesOn.ALL)),
    EMERGENCY_BY(
            "boards with emergency_by output",
            project -> anyType(project, type -> type.emergencyBy() == EmergencyBy.OUTPUT)),
    GROUPS("boards with groups any", project -> anyType(project, type -> type.groups() == GroupSeating.ANY)),
    OFF_TIMES(
            "off delays",
            project -> anyType(project, type -> type.off() == OffTiming.EACH)
                    || anyLoad(project, load -> load.offAfterSeconds() > 0)),
    CONTACTORS(
            "contactors",
            project -> anyLoad(
                    project,
                    load -> load.switchedBy() == SwitchedBy.CONTACTOR
                            || load.comesWith().isPresent())),
    VOLTAGES(
            "loads' line_to_neutral_v",
            project -> anyLoad(project, load -> load.lineToNeutralVolts().isPresent())),
    RACKS("racks", project -> anyLoad(project, load -> load.rack().isPresent())),
    FIXED_TIMES(
            "loads' fixed on_s",
            project -> anyLoad(project, load -> load.fixed().onSeconds().isPresent())),
    WEIGHTS("objective's node_imbalance, move and rack weights", project -> hasNewWeights(project.objective()));

    private final String words;
    private final Predicate<Project> isUsed;

    PlantPart(String words, Predicate<Project> isUsed) {
        this.words = words;
        this.isUsed = isUsed;
    }

    /** As messages call it. */
    public String words() {
        return words;
    }

    /** Whether a project has any of them. */
    public static boolean isUsedIn(Project project) {
        return Stream.of(values()).anyMatch(part -> part.isUsed.test(project));
    }

    /** Parts that a project has: with any of them, bounds of their own hold. */
    public static List<PlantPart> of(Project project) {
        return Stream.of(values()).filter(part -> part.isUsed.test(project)).toList();
    }

    /** Those of {@code some} that a project uses. */
    public static List<PlantPart> used(Project project, Set<PlantPart> some) {
        return Stream.of(values())
                .filter(some::contains)
                .filter(part -> part.isUsed.test(project))
                .toList();
    }

    /** Their words in a row. */
    public static String listed(List<PlantPart> parts) {
        return String.join(", ", parts.stream().map(PlantPart::words).toList());
    }

    private static boolean anyType(Project project, Predicate<BoardType> which) {
        return project.boardTypes().stream().anyMatch(which);
    }

    private static boolean anyLoad(Project project, Predicate<Load> which) {
        return project.loads().stream().anyMatch(which);
    }

    private static boolean hasNewWeights(ObjectiveWeights weights) {
        return weights.nodeImbalance() > 0
                || weights.move() > 0
                || weights.rackPanels() > 0
                || weights.rackBoards() > 0
                || weights.rackRows() > 0;
    }
}
