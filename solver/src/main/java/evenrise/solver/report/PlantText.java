package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** How much of a plant is used: panels and nodes with what is left of them, systems, scenes. */
final class PlantText {
    private final Layout layout;
    private final Project project;
    private final Paint paint;

    private PlantText(Layout layout, Paint paint) {
        this.layout = layout;
        this.project = layout.project();
        this.paint = paint;
    }

    /** @param most how many panels and nodes are listed, those that are used most */
    static List<List<String>> sections(Layout layout, int most, Paint paint) {
        PlantText text = new PlantText(layout, paint);
        List<List<String>> sections = new ArrayList<>();
        sections.add(text.loading(most));
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
                .number("Taken")
                .number("Free")
                .number("To be left")
                .number("Switched");
        List<PointUse> points = PointUse.of(layout);
        Set<PointUse> mostUsed = points.stream()
                .sorted(Comparator.comparingDouble((PointUse point) -> -point.usedPercent()))
                .limit(most)
                .collect(Collectors.toSet());
        for (PointUse point : points) {
            if (!mostUsed.contains(point)) {
                continue;
            }
            List<String> cells = new ArrayList<>(List.of(
                    point.node(), Numbers.fixed(point.lineToNeutralVolts(), 0), Numbers.fixed(point.usedPercent(), 1)));
            if (hasScenes) {
                cells.add(Numbers.fixed(point.fullUsePercent(), 1));
            }
            cells.add(Numbers.fixed(point.neutralPercent(), 1));
            cells.addAll(point.slots().map(PlantText::slots).orElse(Collections.nCopies(5, Numbers.NONE)));
            table.row(point.usedPercent() > 100 ? Tone.BAD : Tone.PLAIN, cells.toArray(String[]::new));
        }
        Section section = new Section(paint, "Loading: running current over what is allowed").table(table);
        if (mostUsed.size() < points.size()) {
            section.text(Phrase.counted(points.size() - mostUsed.size(), "other") + " used less.");
        }
        if (hasScenes) {
            section.text("Used and neutral are those of the worst scene of each; full use is every load at its running"
                    + " current.");
        }
        section.text(
                "V is to neutral; taken are slots with a breaker, free those without one that are not reserved; switched are"
                        + " free slots that take a switched breaker.");
        return section.lines();
    }

    private static List<String> slots(SlotUse use) {
        return List.of(
                Integer.toString(use.slots()),
                Integer.toString(use.taken()),
                Integer.toString(use.free()),
                use.toBeLeft().map(String::valueOf).orElse(Numbers.NONE),
                Integer.toString(use.freeForSwitched()));
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
        for (SystemUse system : SystemUse.of(layout)) {
            List<String> cells = new ArrayList<>(List.of(
                    system.system(),
                    system.needs().isEmpty() ? Numbers.NONE : String.join(", ", system.needs()),
                    Integer.toString(system.loads()),
                    Numbers.seconds(system.lastOnSeconds())));
            system.atSupply()
                    .ifPresent(peak -> cells.addAll(List.of(
                            Numbers.amps(peak.startAmps()),
                            Numbers.amps(peak.inUseAmps()),
                            Numbers.amps(peak.besideAmps()),
                            peak.phase().name())));
            table.row(cells.toArray(String[]::new));
        }
        Section section = new Section(paint, "Systems").table(table);
        return hasClocks
                ? section.text("At the supply, crest at nominal voltage on the worst phase: the system's start, what it"
                                + " draws in use, and what is always on with the other systems at their worst.")
                        .lines()
                : section.lines();
    }

    private List<String> scenes() {
        Table table = new Table()
                .words("Scene")
                .number("Weight")
                .words("Used most")
                .number("Used, %")
                .text("Basis");
        for (SceneLoading row : SceneLoading.of(layout)) {
            boolean isFullUse = row.scene().isEmpty();
            table.row(
                    row.usedPercent() > 100 ? Tone.BAD : Tone.PLAIN,
                    row.scene().orElse("full use"),
                    isFullUse ? Numbers.NONE : Numbers.fixed(row.weight().orElseThrow(), 1),
                    row.node(),
                    Numbers.fixed(row.usedPercent(), 1),
                    isFullUse
                            ? "every load at its running current"
                            : row.basis().orElse("not stated"));
        }
        return new Section(paint, "Scenes").table(table).lines();
    }
}
