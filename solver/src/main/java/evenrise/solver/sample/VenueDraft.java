package evenrise.solver.sample;

import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A venue being drawn: panels with their loads, what ties them together, then the limits that its layout keeps. */
final class VenueDraft {
    private static final double MAX_DURATION_SECONDS = 70;

    private final SeededDraws draw;
    private final VenueSize size;
    private final List<PanelDraft> drafts = new ArrayList<>();
    private final List<ShutdownGroup> wideGroups = new ArrayList<>();

    VenueDraft(SeededDraws draw, VenueSize size) {
        this.draw = draw;
        this.size = size;
        List<PanelMix> counts = counts();
        Optional<String> open = Optional.empty();
        for (int n = 0; n < size.panels(); n++) {
            Optional<String> wide = open;
            open = Optional.empty();
            if (wide.isEmpty() && canShare(counts, n) && draw.chance(0.5)) {
                wide = Optional.of(VenueZones.id(n) + "-main-array");
                wideGroups.add(ShutdownGroup.builder()
                        .id(wide.get())
                        .onEmergency(OnEmergency.DROP)
                        .samePanel(false)
                        .build());
                open = wide;
            }
            drafts.add(new PanelDraft(n, size.panels(), counts.get(n), wide, size.system(), draw));
        }
        tieTogether();
    }

    private List<PanelMix> counts() {
        List<PanelMix> counts = new ArrayList<>();
        int left = size.loads();
        for (int panels = size.panels(); panels > 0; panels--) {
            int even = left / panels;
            int fewest = Math.max(VenueSize.FEWEST_LOADS, left - VenueSize.MOST_LOADS * (panels - 1));
            int most = Math.min(VenueSize.MOST_LOADS, left - VenueSize.FEWEST_LOADS * (panels - 1));
            int loads = Math.max(fewest, Math.min(most, panels == 1 ? left : even + draw.whole(-3, 3)));
            counts.add(PanelMix.of(loads, draw));
            left -= loads;
        }
        return counts;
    }

    /** Whether the amplifiers of this panel and the next, with nothing else on their boards, outnumber any board. */
    private boolean canShare(List<PanelMix> counts, int panel) {
        if (panel + 1 >= counts.size() || panel % VenueZones.PANELS_IN_ZONE == VenueZones.PANELS_IN_ZONE - 1) {
            return false;
        }
        PanelMix here = counts.get(panel);
        PanelMix next = counts.get(panel + 1);
        int largest = Boards.TYPES.get(Boards.TYPES.size() - 1).outputs();
        return here.displays() == 0 && next.displays() == 0 && here.amplifiers() + next.amplifiers() > largest;
    }

    private void tieTogether() {
        LoadDraft core = drafts.get(0).first(EquipmentKinds.CORE_SWITCH);
        core.fixed = FixedPlace.builder()
                .panel(core.panel)
                .board(core.board)
                .output(core.output)
                .build();
        if (drafts.size() > 1) {
            drafts.get(1).first(EquipmentKinds.CORE_SWITCH).apartFrom.add(core.id);
        }
        LoadDraft spare = null;
        for (PanelDraft draft : drafts) {
            draft.first(EquipmentKinds.SWITCH).comesAfter.add(core.id);
            List<LoadDraft> processors = draft.loads.stream()
                    .filter(load -> load.kit == EquipmentKinds.PROCESSOR)
                    .toList();
            processors.forEach(processor -> processor.comesAfter.add(core.id));
            if (processors.size() > 1 && draw.chance(0.5)) {
                processors.get(1).samePhaseAs.add(processors.get(0).id);
            }
            if (!processors.isEmpty() && spare != null && draw.chance(0.5)) {
                processors.get(0).apartFrom.add(spare.id);
                spare = null;
            } else {
                spare = processors.isEmpty() ? spare : processors.get(0);
            }
        }
    }

    /** The venue with the limits that its layout keeps. */
    Venue venue(String name) {
        List<Panel> panels = drafts.stream().map(PanelDraft::panel).toList();
        drafts.forEach(this::fixSome);
        Project open = project(name, supply(Ratings.UNKNOWN_AMPS, 1, OptionalDouble.empty()), panels);
        Plan layout = layout();
        List<NodeFigures> nodes = Layout.of(open, layout).nodes();
        NodeFigures supply = nodes.get(0);
        double rated = Ratings.ratedAmps(supply);
        List<Panel> limited = new ArrayList<>();
        for (int n = 0; n < panels.size(); n++) {
            limited.add(limited(panels.get(n), nodes.get(n + 1)));
        }
        return new Venue(
                project(
                        name,
                        supply(
                                rated,
                                Ratings.neutralFactor(supply, rated),
                                OptionalDouble.of(Ratings.inrushLimitAmps(supply))),
                        limited),
                layout);
    }

    private void fixSome(PanelDraft draft) {
        for (LoadDraft load : draft.loads) {
            if (load.fixed.equals(FixedPlace.NONE) && draw.chance(load.switched ? 0.02 : 0.4)) {
                OptionalInt slot = draw.chance(0.5) ? OptionalInt.of(load.slot) : OptionalInt.empty();
                load.fixed = FixedPlace.builder().panel(load.panel).slot(slot).build();
            }
        }
    }

    private Panel limited(Panel panel, NodeFigures node) {
        double rated = Ratings.ratedAmps(node);
        boolean limits = draw.chance(0.3);
        return panel.with()
                .ratedAmps(rated)
                .neutralFactor(Ratings.neutralFactor(node, rated))
                .inrushLimitAmps(limits ? OptionalDouble.of(Ratings.inrushLimitAmps(node)) : OptionalDouble.empty())
                .build();
    }

    private Supply supply(double rated, double neutralFactor, OptionalDouble inrushLimit) {
        return Supply.builder()
                .system(size.system())
                .lineToNeutralVolts(120)
                .frequencyHertz(60)
                .ratedAmps(rated)
                .continuousFraction(Ratings.CONTINUOUS_FRACTION)
                .neutralFactor(neutralFactor)
                .inrushLimitAmps(inrushLimit)
                .build();
    }

    private Plan layout() {
        return Plan.builder()
                .boards(drafts.stream()
                        .flatMap(draft -> draft.boards.settings.stream())
                        .toList())
                .assignments(drafts.stream()
                        .flatMap(draft -> draft.loads.stream())
                        .map(LoadDraft::assignment)
                        .toList())
                .build();
    }

    private Project project(String name, Supply supply, List<Panel> panels) {
        List<ShutdownGroup> groups = new ArrayList<>(wideGroups);
        drafts.forEach(draft -> groups.addAll(draft.groups));
        return Project.builder()
                .name(name)
                .supply(supply)
                .timingToleranceSeconds(0.02)
                .maxDurationSeconds(MAX_DURATION_SECONDS)
                .panels(panels)
                .boardTypes(Boards.TYPES)
                .boards(drafts.stream()
                        .flatMap(draft -> draft.boards.boards.stream())
                        .toList())
                .shutdownGroups(groups)
                .loads(drafts.stream()
                        .flatMap(draft -> draft.loads.stream())
                        .map(LoadDraft::load)
                        .toList())
                .objective(ObjectiveWeights.DEFAULT)
                .build();
    }
}
