package evenrise.solver.sample;

import evenrise.model.plan.Plan;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A venue being drawn: panels with their loads, what ties them together, then the limits that its layout keeps. */
final class VenueDraft {
    private static final double MAX_DURATION_SECONDS = 70;
    private static final double ROOMY_DURATION_SECONDS = 90;

    private static final double NODE_WEIGHT = 0.5;
    /** Less than anything that is felt, and enough that no board is used that others could stand in for. */
    private static final double BOARD_WEIGHT = 0.1;

    private static final double RACK_PANELS_WEIGHT = 2;
    private static final double RACK_BOARDS_WEIGHT = 1;
    private static final double RACK_ROWS_WEIGHT = 0.2;

    private final SeededDraws draw;
    private final VenueSize size;
    private final VenueFrame frame;
    private final List<PanelDraft> drafts = new ArrayList<>();
    private final List<ShutdownGroup> wideGroups = new ArrayList<>();

    VenueDraft(SeededDraws draw, VenueFrame frame) {
        this.draw = draw;
        this.frame = frame;
        size = frame.size();
        List<PanelMix> counts = counts();
        Optional<String> open = Optional.empty();
        for (int n = 0; n < size.panels(); n++) {
            Optional<String> wide = open;
            open = Optional.empty();
            if (wide.isEmpty() && canShare(counts, n) && draw.chance(0.5)) {
                wide = Optional.of(frame.zones().id(n) + "-main-array");
                wideGroups.add(ShutdownGroup.builder()
                        .id(wide.get())
                        .onEmergency(OnEmergency.DROP)
                        .samePanel(false)
                        .build());
                open = wide;
            }
            drafts.add(new PanelDraft(n, frame, counts.get(n), wide, draw));
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
        return here.displays() == 0
                && next.displays() == 0
                && here.amplifiers() + next.amplifiers() > BoardKinds.LARGEST_OUTPUTS;
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
            boolean waits = frame.halls().canWait(draft.loads.get(0).system, core.system);
            if (waits) {
                draft.first(EquipmentKinds.SWITCH).comesAfter.add(core.id);
            }
            List<LoadDraft> processors = draft.loads.stream()
                    .filter(load -> load.kit == EquipmentKinds.PROCESSOR)
                    .toList();
            processors.stream().filter(each -> waits).forEach(each -> each.comesAfter.add(core.id));
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
        List<Panel> panels = drafts.stream().map(draft -> draft.panel(frame)).toList();
        drafts.forEach(this::fixSome);
        List<DistributionNode> nodes = frame.tree().nodes;
        Project open = project(name, supply(Ratings.UNKNOWN_AMPS, 1, OptionalDouble.empty()), nodes, panels);
        Plan layout = layout();
        Map<String, NodeFigures> figures = Layout.of(open, layout).nodes().stream()
                .collect(Collectors.toMap(NodeFigures::node, Function.identity()));
        Map<String, Double> metres = new HashMap<>();
        drafts.forEach(draft -> metres.put(draft.id, draft.feederMetres()));
        NodeFigures supply = figures.get(NodeFigures.SUPPLY);
        double rated = rated(supply);
        return new Venue(
                project(
                        name,
                        supply(
                                rated,
                                Ratings.neutralFactor(supply, rated),
                                OptionalDouble.of(inrushLimit(supply, rated, Ratings.MAIN_HOLDS))),
                        nodes.stream()
                                .map(node -> limited(node, figures.get(node.id())))
                                .toList(),
                        panels.stream()
                                .map(panel -> limited(panel, figures.get(panel.id()), metres.get(panel.id())))
                                .toList()),
                layout);
    }

    private double rated(NodeFigures figures) {
        return frame.plant().isFlat() ? Ratings.ratedAmps(figures) : Ratings.roomyAmps(figures);
    }

    private double inrushLimit(NodeFigures figures, double rated, double holds) {
        return frame.plant().isFlat() ? Ratings.inrushLimitAmps(figures) : Ratings.passingAmps(rated, holds);
    }

    private void fixSome(PanelDraft draft) {
        for (LoadDraft load : draft.loads) {
            if (load.fixed.equals(FixedPlace.NONE) && draw.chance(load.switched ? 0.02 : 0.4)) {
                OptionalInt slot = draw.chance(0.5) ? OptionalInt.of(load.slot) : OptionalInt.empty();
                load.fixed = FixedPlace.builder().panel(load.panel).slot(slot).build();
            }
        }
    }

    private Panel limited(Panel panel, NodeFigures figures, double metres) {
        double rated = rated(figures);
        boolean limits = draw.chance(0.3);
        boolean isWired = frame.plant().has(PlantOption.WIRING);
        return panel.with()
                .ratedAmps(rated)
                .neutralFactor(Ratings.neutralFactor(figures, rated))
                .inrushLimitAmps(
                        limits ? OptionalDouble.of(inrushLimit(figures, rated, Ratings.HOLDS)) : OptionalDouble.empty())
                .feeder(isWired ? Optional.of(Wiring.feeder(metres, rated, Wiring.DEVICE)) : Optional.empty())
                .interruptingAmps(isWired ? OptionalDouble.of(Wiring.PANEL_INTERRUPTS_AMPS) : OptionalDouble.empty())
                .build();
    }

    private DistributionNode limited(DistributionNode node, NodeFigures figures) {
        double rated = rated(figures);
        boolean isMain = node.transformer().isEmpty() && node.source().isEmpty();
        double holds = isMain ? Ratings.MAIN_HOLDS : Ratings.HOLDS;
        DistributionNode limited = node.with()
                .ratedAmps(rated)
                .neutralFactor(Ratings.neutralFactor(figures, rated))
                .inrushLimitAmps(OptionalDouble.of(inrushLimit(figures, rated, holds)))
                .transformer(node.transformer().map(it -> Ratings.built(it, rated)))
                .build();
        return frame.plant().has(PlantOption.WIRING) ? Wiring.wired(limited) : limited;
    }

    private Supply supply(double rated, double neutralFactor, OptionalDouble inrushLimit) {
        return Supply.builder()
                .system(size.system())
                .lineToNeutralVolts(frame.tree().supplyVolts())
                .frequencyHertz(60)
                .ratedAmps(rated)
                .continuousFraction(Ratings.CONTINUOUS_FRACTION)
                .neutralFactor(neutralFactor)
                .inrushLimitAmps(inrushLimit)
                .main(frame.plant().has(PlantOption.WIRING) ? Optional.of(Wiring.MAIN_DEVICE) : Optional.empty())
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

    private Project project(String name, Supply supply, List<DistributionNode> nodes, List<Panel> panels) {
        List<ShutdownGroup> groups = new ArrayList<>(wideGroups);
        drafts.forEach(draft -> groups.addAll(draft.groups));
        return Project.builder()
                .name(name)
                .supply(supply)
                .timingToleranceSeconds(0.02)
                .maxDurationSeconds(frame.plant().isFlat() ? MAX_DURATION_SECONDS : ROOMY_DURATION_SECONDS)
                .nodes(nodes)
                .panels(panels)
                .systems(frame.halls().systems())
                .overlap(frame.plant().overlap())
                .scenes(frame.halls().scenes())
                .boardTypes(frame.kinds().all())
                .boards(drafts.stream()
                        .flatMap(draft -> draft.boards.boards.stream())
                        .toList())
                .shutdownGroups(groups)
                .loads(drafts.stream()
                        .flatMap(draft -> draft.loads.stream())
                        .map(LoadDraft::load)
                        .toList())
                .electrical(frame.plant().has(PlantOption.WIRING) ? Wiring.electrical(supply) : Electrical.UNKNOWN)
                .objective(objective())
                .build();
    }

    private ObjectiveWeights objective() {
        boolean hasRacks = frame.plant().has(PlantOption.RACKS);
        return ObjectiveWeights.DEFAULT
                .with()
                .boards(BOARD_WEIGHT)
                .nodeImbalance(frame.tree().nodes.isEmpty() ? 0 : NODE_WEIGHT)
                .rackPanels(hasRacks ? RACK_PANELS_WEIGHT : 0)
                .rackBoards(hasRacks ? RACK_BOARDS_WEIGHT : 0)
                .rackRows(hasRacks ? RACK_ROWS_WEIGHT : 0)
                .build();
    }
}
