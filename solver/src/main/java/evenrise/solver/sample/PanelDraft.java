package evenrise.solver.sample;

import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotNumbering;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** One panel being drawn: its loads with their outputs, their groups, its boards. */
final class PanelDraft {
    /** Slots for unswitched breakers only, at the end of panels that have such. */
    private static final int UNSWITCHED_SLOTS = 4;

    final String id;
    final PanelMix counts;
    final List<LoadDraft> loads = new ArrayList<>();
    final List<ShutdownGroup> groups = new ArrayList<>();
    final Boards boards;
    private final String place;
    private final int index;
    private final List<String> zone;
    private final PhaseSystem system;
    private final SeededDraws draw;

    /** @param wideGroup the group that all its amplifiers belong to, shared with another panel; empty for groups of its own */
    PanelDraft(int index, VenueFrame frame, PanelMix counts, Optional<String> wideGroup, SeededDraws draw) {
        this.index = index;
        this.counts = counts;
        this.system = frame.tree().system(index);
        this.draw = draw;
        id = frame.zones().id(index);
        place = frame.zones().name(index);
        zone = frame.zones().zoneOf(index, frame.size().panels());
        boards = new Boards(
                index,
                id,
                draw.chance(0.35) ? reaching() : List.of(id),
                counts,
                frame.kinds(),
                frame.halls().system(index));
        processing();
        auxiliaries();
        if (wideGroup.isPresent()) {
            amplifiers(EquipmentKinds.MAIN_ARRAY, wideGroup, counts.amplifiers(), Boards.FIRST_AMPLIFIER);
        } else {
            groupedAmplifiers();
        }
        calls();
        for (int n = 0; n < counts.alwaysOn(); n++) {
            add(draw.of(EquipmentKinds.ALWAYS_ON_KITS), false);
        }
        furnish(frame);
    }

    private void furnish(VenueFrame frame) {
        VenuePlant plant = frame.plant();
        for (LoadDraft load : loads) {
            load.system = frame.halls().system(index);
            load.onSeconds = load.board.isPresent()
                    ? boards.ownSeconds(load.board.get(), load.output.orElseThrow())
                    : OptionalDouble.empty();
            load.statesInrush = load.switched || !plant.isFlat();
            load.isWired = plant.has(PlantOption.WIRING);
            if (plant.has(PlantOption.TRANSFORMERS)) {
                load.lineToNeutralVolts = OptionalDouble.of(VenueTree.PANEL_VOLTS);
            }
        }
        if (plant.has(PlantOption.CONTACTORS)) {
            Furnishing.contactors(this);
        }
        if (plant.has(PlantOption.RACKS)) {
            Furnishing.racks(this);
        }
        if (plant.has(PlantOption.OFF_DELAYS)) {
            Furnishing.offDelays(this, frame.kinds(), index);
        }
    }

    private List<String> reaching() {
        List<String> others = zone.stream().filter(other -> !other.equals(id)).toList();
        return others.isEmpty() ? List.of(id) : List.of(id, draw.of(others));
    }

    /** Whether the venue's core network switch A (panel 0) or B (panel 1) stands here. */
    boolean hasCore() {
        return index < 2;
    }

    private void processing() {
        Optional<String> control =
                draw.chance(0.5) ? Optional.of(group("control", OnEmergency.HOLD, false)) : Optional.empty();
        List<Kit> kits = new ArrayList<>();
        List<Integer> outputs = new ArrayList<>(List.of(3, 4, 1, 5, 2));
        if (hasCore()) {
            kits.add(EquipmentKinds.CORE_SWITCH);
            Collections.swap(outputs, 0, 2);
            Collections.swap(outputs, 1, 2);
        }
        kits.add(EquipmentKinds.SWITCH);
        while (kits.size() < counts.processing()) {
            boolean comesAfterCore = outputs.get(kits.size()) > 3;
            kits.add(comesAfterCore ? EquipmentKinds.PROCESSOR : draw.of(EquipmentKinds.PROCESSING_KITS));
        }
        for (int n = 0; n < kits.size(); n++) {
            LoadDraft load = add(kits.get(n), true);
            load.on(Boards.hold(id), outputs.get(n));
            load.group = control;
        }
    }

    private void auxiliaries() {
        String network = first(EquipmentKinds.SWITCH).id;
        for (int n = 0; n < counts.auxiliary(); n++) {
            LoadDraft load = add(draw.of(EquipmentKinds.AUXILIARY_KITS), true);
            load.on(Boards.hold(id), Boards.FIRST_AUXILIARY + n);
            if (draw.chance(0.3)) {
                load.comesAfter.add(network);
            }
        }
        if (counts.displays() > 0) {
            String displays = group("displays", OnEmergency.DROP, false);
            Kit kit = draw.of(EquipmentKinds.DISPLAY_KITS);
            for (int n = 0; n < counts.displays(); n++) {
                LoadDraft load = add(kit, true);
                load.on(Boards.drop(id), 1 + n);
                load.group = Optional.of(displays);
                load.comesAfter.add(network);
            }
        }
    }

    private void groupedAmplifiers() {
        int placed = 0;
        for (int number = 1; placed < counts.amplifiers(); number++) {
            int size = Math.min(counts.amplifiers() - placed, draw.whole(2, 7));
            String group = group("sound-" + number, OnEmergency.DROP, draw.chance(0.15));
            amplifiers(
                    draw.of(EquipmentKinds.AMPLIFIER_KITS), Optional.of(group), size, Boards.FIRST_AMPLIFIER + placed);
            placed += size;
        }
    }

    private void amplifiers(Kit kit, Optional<String> group, int size, int firstOutput) {
        List<String> panels = draw.chance(0.6) ? zone : List.of();
        Optional<LoadDraft> processor = loads.stream()
                .filter(load -> load.kit == EquipmentKinds.PROCESSOR)
                .findFirst();
        for (int n = 0; n < size; n++) {
            LoadDraft load = add(kit, true);
            load.on(Boards.drop(id), firstOutput + n);
            load.group = group;
            load.panels = panels;
            processor.ifPresent(found -> load.comesAfter.add(found.id));
        }
    }

    private void calls() {
        for (int n = 0; n < counts.calls(); n++) {
            LoadDraft load = add(EquipmentKinds.CALL_AMPLIFIER, true);
            load.on(Boards.call(id), 1 + n);
            load.panels = zone;
        }
    }

    private LoadDraft add(Kit kit, boolean switched) {
        long alike = loads.stream().filter(load -> load.kit == kit).count();
        LoadDraft load = new LoadDraft(
                String.format(Locale.ROOT, "%s-%02d", id, loads.size() + 1),
                place + " " + kit.name() + " " + (alike + 1),
                kit,
                system.phases().size(),
                id,
                switched,
                draw);
        loads.add(load);
        return load;
    }

    private String group(String name, OnEmergency onEmergency, boolean samePanel) {
        String group = id + "-" + name;
        groups.add(ShutdownGroup.builder()
                .id(group)
                .onEmergency(onEmergency)
                .samePanel(samePanel)
                .build());
        return group;
    }

    /** The first load of a kind. */
    LoadDraft first(Kit kit) {
        return loads.stream().filter(load -> load.kit == kit).findFirst().orElseThrow();
    }

    /** Invented; by its place in the zone. */
    double feederMetres() {
        return 9 + 5 * (index % VenueZones.PANELS_IN_ZONE);
    }

    /** Places the loads in the smallest panel that leaves about a sixth of its slots spare; it has no limits yet. */
    Panel panel(VenueFrame frame) {
        int poles = loads.stream().mapToInt(load -> load.poles).sum();
        boolean splits = counts.alwaysOn() > 0 && draw.chance(0.2);
        int reserved = draw.whole(0, 2);
        int needed = (int) Math.ceil(poles * (frame.plant().isFlat() ? 1.18 : 1.35))
                + reserved
                + (splits ? UNSWITCHED_SLOTS : 0);
        int slots = Ratings.slots(needed);
        int last = slots - reserved;
        List<Phase> rotation = new ArrayList<>(system.phases());
        Collections.rotate(rotation, draw.whole(0, 2));
        Panel panel = Panel.builder()
                .id(id)
                .slots(slots)
                .ratedAmps(Ratings.UNKNOWN_AMPS)
                .neutralFactor(1)
                .numbering(SlotNumbering.ALTERNATING)
                .phaseRotation(rotation)
                .reservedSlots(IntStream.rangeClosed(last + 1, slots).boxed().toList())
                .switchedSlots(
                        splits
                                ? Optional.of(IntStream.rangeClosed(1, last - UNSWITCHED_SLOTS)
                                        .boxed()
                                        .toList())
                                : Optional.empty())
                .build();
        new SlotFill(panel, system).fill(loads);
        return panel.with()
                .fedFrom(frame.tree().feeds(index))
                .spare(
                        frame.plant().has(PlantOption.SPARE)
                                ? Optional.of(Furnishing.spare(panel, system, loads))
                                : Optional.empty())
                .build();
    }
}
