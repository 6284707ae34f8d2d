package evenrise.solver.compare;

import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.LabourHours;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Projects of two to four loads with a catalogue, so small that every plan of every make-up can be looked at. */
final class TinyEstimate {
    private final Random random;

    private TinyEstimate(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L);
    }

    static Project of(long seed) {
        return new TinyEstimate(seed).draw("tiny-estimate-" + seed);
    }

    private Project draw(String name) {
        List<PanelType> panelTypes = List.of(panelType("U"), panelType("V"));
        List<BoardType> boardTypes = List.of(boardType("T1"), boardType("T2"));
        List<ShutdownGroup> groups = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            groups.add(ShutdownGroup.builder()
                    .id("G" + i)
                    .onEmergency(random.nextBoolean() ? OnEmergency.DROP : OnEmergency.HOLD)
                    .samePanel(random.nextInt(4) == 0)
                    .build());
        }
        PhaseSystem system = random.nextInt(3) == 0 ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE;
        List<Load> loads = new ArrayList<>();
        int count = 2 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            loads.add(load("L" + i, loads));
        }
        return Project.builder()
                .name(name)
                .supply(Supply.builder()
                        .system(system)
                        .lineToNeutralVolts(120)
                        .frequencyHertz(60)
                        .ratedAmps(40 + 20 * random.nextInt(3))
                        .build())
                .maxDurationSeconds(1 + random.nextInt(4))
                .panels(List.of(Panel.builder().id("P").slots(12).ratedAmps(100).build()))
                .boardTypes(boardTypes)
                .boards(List.of(Board.builder().id("B").type("T1").panel("P").build()))
                .shutdownGroups(groups)
                .loads(loads)
                .catalogue(Optional.of(catalogue(panelTypes)))
                .build();
    }

    private Catalogue catalogue(List<PanelType> panelTypes) {
        Catalogue worked = worked(panelTypes);
        return random.nextInt(3) > 0 ? worked : worked.withFeeders(List.of(feeder(15), feeder(40)));
    }

    /** Feeders follow the panels, and panels of several types may share a kind of them. */
    private FeederPrice feeder(double upToAmps) {
        double price = 5 + random.nextInt(30);
        return FeederPrice.builder()
                .upToAmps(upToAmps)
                .price(price)
                .priceBreaks(breaks(price))
                .build();
    }

    /** Half of them with hours and percentages. */
    private Catalogue worked(List<PanelType> panelTypes) {
        Catalogue bare =
                Catalogue.builder().currency("EUR").panelTypes(panelTypes).build();
        if (random.nextBoolean()) {
            return bare;
        }
        List<AddedPercentage> percentages = new ArrayList<>();
        for (PercentageBase base : PercentageBase.values()) {
            if (random.nextBoolean()) {
                percentages.add(AddedPercentage.builder()
                        .name("part " + base)
                        .percent(random.nextInt(300) / 10.0)
                        .of(base)
                        .build());
            }
        }
        return bare.with()
                .labourHours(Optional.of(LabourHours.builder()
                        .rate(31.37)
                        .perBoard(random.nextInt(100) / 100.0)
                        .perPanel(random.nextInt(300) / 100.0)
                        .build()))
                .percentages(percentages)
                .build();
    }

    /** In two of three cases lower ones from some numbers on. */
    private List<PriceBreak> breaks(double price) {
        List<PriceBreak> breaks = new ArrayList<>();
        int from = 1;
        double each = price;
        for (int i = random.nextInt(3); i > 0; i--) {
            from += 1 + random.nextInt(2);
            each *= 0.6 + 0.3 * random.nextDouble();
            breaks.add(PriceBreak.builder()
                    .from(from)
                    .price(Math.rint(each * 100) / 100)
                    .build());
        }
        return breaks;
    }

    private PanelType panelType(String id) {
        double price = 50 + random.nextInt(100);
        return PanelType.builder()
                .id(id)
                .slots(1 + random.nextInt(4))
                .ratedAmps(10 + 10 * random.nextInt(3))
                .neutralFactor(1)
                .numbering(random.nextBoolean() ? SlotNumbering.ALTERNATING : SlotNumbering.SEQUENTIAL)
                .price(price)
                .priceBreaks(breaks(price))
                .build();
    }

    private BoardType boardType(String id) {
        double price = 20 + random.nextInt(60);
        return BoardType.builder()
                .id(id)
                .outputs(1 + random.nextInt(3))
                .startDelaySeconds(random.nextBoolean() ? List.of(0.0) : List.of(0.0, 1.0))
                .stepSeconds(List.of(0.5))
                .price(price)
                .priceBreaks(breaks(price))
                .build();
    }

    private Load load(String id, List<Load> before) {
        return Load.builder()
                .id(id)
                .role(Role.values()[random.nextInt(Role.values().length)])
                .poles(1 + random.nextInt(2) * random.nextInt(2))
                .breakerAmps(20)
                .switched(random.nextInt(6) > 0)
                .runningAmps(1 + random.nextInt(9))
                .inrushPeakAmps(20)
                .settleSeconds(random.nextInt(3) == 0 ? 0.5 : 0)
                .shutdownGroup(random.nextBoolean() ? Optional.of("G" + random.nextInt(2)) : Optional.empty())
                .apartFrom(
                        !before.isEmpty() && random.nextInt(5) == 0
                                ? List.of(before.get(0).id())
                                : List.of())
                .build();
    }
}
