package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Panel;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How much of a plant is used: panels and nodes with what is left of them, systems, scenes. Nothing of a plain house. */
final class PlantText {
    private final Layout layout;
    private final Project project;
    private final List<NodeLimits> limits;
    private final Paint paint;

    private PlantText(Layout layout, Paint paint) {
        this.layout = layout;
        this.project = layout.project();
        this.limits = NodeLimits.of(project);
        this.paint = paint;
    }

    /** @param most how many panels and nodes are listed, those that are used most */
    static List<List<String>> sections(Layout layout, int most, Paint paint) {
        PlantText text = new PlantText(layout, paint);
        List<List<String>> sections = new ArrayList<>();
        if (PlantPart.isUsedIn(text.project)) {
            sections.add(text.loading(most));
        }
        if (!text.project.systems().isEmpty()) {
            sections.add(text.systems());
        }
        if (!text.project.scenes().isEmpty()) {
            sections.add(text.scenes());
        }
        return sections;
    }

    private List<String> loading(int most) {
        boolean hasScenes = !project.scenes().isEmpty();
        Table table = new Table().words("Node").number("V").number("Used, %");
        if (hasScenes) {
            table.number("Full use, %");
        }
        table.number("Neutral, %")
                .number("Slots")
                .number("Free")
                .number("To be left")
                .number("Switched");
        List<Point> points = layout.distribution().points();
        List<Point> shown = points.stream()
                .sorted(Comparator.comparingDouble((Point point) -> -usedPercent(point)))
                .limit(most)
                .sorted(Comparator.comparingInt(Point::index))
                .toList();
        for (Point point : shown) {
            List<String> cells = new ArrayList<>(List.of(
                    point.id(), Numbers.fixed(point.lineToNeutralVolts(), 0), Numbers.fixed(usedPercent(point), 1)));
            if (hasScenes) {
                cells.add(Numbers.fixed(percent(layout.fullUse(), point), 1));
            }
            cells.add(Numbers.fixed(
                    100
                            * layout.nodes().get(point.index()).neutralAmps()
                            / limits.get(point.index()).neutralAmps(),
                    1));
            cells.addAll(slots(point.panel()));
            table.row(usedPercent(point) > 100 ? Tone.BAD : Tone.PLAIN, cells.toArray(String[]::new));
        }
        Section section = new Section(paint, "Loading: running current over what is allowed").table(table);
        if (shown.size() < points.size()) {
            section.text(Phrase.counted(points.size() - shown.size(), "other") + " used less.");
        }
        if (hasScenes) {
            section.text("Used and neutral are those of the worst scene of each; full use is every load at its running"
                    + " current.");
        }
        section.text("V is to neutral; switched are free slots that take a switched breaker.");
        return section.lines();
    }

    private List<String> slots(Optional<Panel> panel) {
        if (panel.isEmpty()) {
            return Collections.nCopies(4, Numbers.NONE);
        }
        FreeSlots free = FreeSlots.of(panel.get(), layout);
        return List.of(
                Integer.toString(panel.get().slots()),
                Integer.toString(free.count()),
                project.spareIn(panel.get())
                        .map(Spare::slots)
                        .map(String::valueOf)
                        .orElse(Numbers.NONE),
                Integer.toString(free.forSwitched()));
    }

    private double usedPercent(Point point) {
        return 100
                * Collections.max(
                        layout.nodes().get(point.index()).runningAmps().values())
                / limits.get(point.index()).continuousAmps();
    }

    private double percent(UseCurrents use, Point point) {
        return 100 * use.greatestAmps(point) / limits.get(point.index()).continuousAmps();
    }

    private List<String> systems() {
        boolean hasClocks = project.hasClocks();
        Table table = new Table()
                .words("System")
                .words("On before it")
                .number("Loads")
                .number("Last on, s");
        if (hasClocks) {
            table.number("Start, A").number("In use, A").number("Beside it, A").words("Phase");
        }
        List<NodeStart> starts = layout.starts(Distribution.SUPPLY);
        for (int i = 0; i < project.systems().size(); i++) {
            SwitchedSystem system = project.systems().get(i);
            List<Placement> own = layout.placements().stream()
                    .filter(each -> each.isSequenced() && each.load().system().equals(Optional.of(system.id())))
                    .toList();
            List<String> cells = new ArrayList<>(List.of(
                    system.id(),
                    system.needs().isEmpty() ? Numbers.NONE : String.join(", ", system.needs()),
                    Integer.toString(own.size()),
                    Numbers.seconds(own.stream()
                            .mapToDouble(each -> each.onSeconds().orElseThrow())
                            .max()
                            .orElse(0))));
            if (hasClocks) {
                cells.addAll(peaks(starts.get(i)));
            }
            table.row(cells.toArray(String[]::new));
        }
        Section section = new Section(paint, "Systems").table(table);
        return hasClocks
                ? section.text("At the supply, crest at nominal voltage on the worst phase: the system's start, what it"
                                + " draws in use, and what is always on with the other systems at their worst.")
                        .lines()
                : section.lines();
    }

    private static List<String> peaks(NodeStart start) {
        PhasePeak worst = start.peaks().values().stream()
                .max(Comparator.comparingDouble(
                        peak -> Math.max(peak.amps(), start.usedAmps().get(peak.phase()))))
                .orElseThrow();
        double rest = start.restAmps().get(worst.phase());
        return List.of(
                Numbers.amps(worst.amps() - rest),
                Numbers.amps(start.usedAmps().get(worst.phase()) - rest),
                Numbers.amps(rest),
                worst.phase().name());
    }

    private List<String> scenes() {
        Table table = new Table()
                .words("Scene")
                .number("Weight")
                .words("Used most")
                .number("Used, %")
                .text("Basis");
        for (int i = 0; i < project.scenes().size(); i++) {
            Scene scene = project.scenes().get(i);
            scene(
                    table,
                    scene.id(),
                    Numbers.fixed(scene.weight(), 1),
                    layout.sceneUses().get(i),
                    scene.basis().orElse("not stated"));
        }
        scene(table, "full use", Numbers.NONE, layout.fullUse(), "every load at its running current");
        return new Section(paint, "Scenes").table(table).lines();
    }

    private void scene(Table table, String name, String weight, UseCurrents use, String basis) {
        Map.Entry<Point, Double> most = layout.distribution().points().stream()
                .map(point -> Map.entry(point, percent(use, point)))
                .reduce((kept, next) -> next.getValue() > kept.getValue() ? next : kept)
                .orElseThrow();
        table.row(
                most.getValue() > 100 ? Tone.BAD : Tone.PLAIN,
                name,
                weight,
                most.getKey().id(),
                Numbers.fixed(most.getValue(), 1),
                basis);
    }
}
