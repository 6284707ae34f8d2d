package evenrise.solver.sample;

import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Conduit;
import evenrise.model.project.Device;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Practice;
import evenrise.model.project.SourceKind;
import evenrise.model.project.Supply;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import java.util.List;
import java.util.Optional;

/**
 * Cables, devices and sources of a drawn plant, by American practice. Copper at 75 °C; every size carries the device before
 * it with about a fifth to spare (ampacities from NEC table 310.16, protective conductors one size above table 250.122, both
 * from memory). Lengths and fault levels: invented.
 */
final class Wiring {
    private record Size(double amps, int sets, String line, String protective) {}

    private static final List<Size> SIZES = List.of(
            new Size(60, 1, "4 AWG", "8 AWG"),
            new Size(100, 1, "1 AWG", "6 AWG"),
            new Size(125, 1, "1/0 AWG", "6 AWG"),
            new Size(150, 1, "2/0 AWG", "4 AWG"),
            new Size(200, 1, "4/0 AWG", "4 AWG"),
            new Size(225, 1, "250 kcmil", "3 AWG"),
            new Size(250, 1, "300 kcmil", "3 AWG"),
            new Size(300, 1, "400 kcmil", "2 AWG"),
            new Size(400, 1, "600 kcmil", "1 AWG"),
            new Size(500, 2, "300 kcmil", "1/0 AWG"),
            new Size(600, 2, "400 kcmil", "2/0 AWG"),
            new Size(800, 2, "600 kcmil", "3/0 AWG"),
            new Size(1000, 3, "500 kcmil", "4/0 AWG"),
            new Size(1200, 4, "400 kcmil", "250 kcmil"),
            new Size(1600, 5, "500 kcmil", "300 kcmil"),
            new Size(2500, 7, "500 kcmil", "500 kcmil"),
            new Size(5000, 14, "500 kcmil", "500 kcmil"));

    static final Device DEVICE = tripping(Ratings.HOLDS, 12);
    static final Device MAIN_DEVICE = tripping(Ratings.MAIN_HOLDS, 20);

    static final double PANEL_INTERRUPTS_AMPS = 22_000;
    private static final double MAIN_INTERRUPTS_AMPS = 65_000;
    private static final double NODE_METRES = 20;
    private static final double SECONDARY_METRES = 3;
    private static final double THIN_BREAKER_AMPS = 20;
    private static final double BRANCH_TRIP = 10;

    private Wiring() {}

    private static Device tripping(double holds, double trips) {
        return Device.builder()
                .instantaneous(new InstantaneousRange(holds, trips))
                .build();
    }

    static Feeder feeder(double metres, double amps, Device device) {
        return Feeder.builder()
                .cable(cable(metres, amps))
                .breakerAmps(amps)
                .device(device)
                .build();
    }

    /** A node with what stands before it and behind it. */
    static DistributionNode wired(DistributionNode node) {
        Optional<Feeder> feeder = node.transformer()
                .map(it -> feeder(NODE_METRES, Ratings.primaryDeviceAmps(it), DEVICE))
                .or(() -> node.source().isPresent()
                        ? Optional.empty()
                        : Optional.of(feeder(NODE_METRES, node.ratedAmps(), MAIN_DEVICE)));
        return node.with()
                .feeder(feeder)
                .interruptingAmps(MAIN_INTERRUPTS_AMPS)
                .main(
                        node.transformer().isPresent() || node.source().isPresent()
                                ? Optional.of(DEVICE)
                                : Optional.empty())
                .transformer(node.transformer().map(it -> behind(it, node.ratedAmps())))
                .source(node.source().map(it -> fed(it, node.ratedAmps())))
                .build();
    }

    private static Transformer behind(Transformer transformer, double amps) {
        return transformer.withSecondaryCable(Optional.of(cable(SECONDARY_METRES, amps)));
    }

    private static NodeSource fed(NodeSource source, double amps) {
        return source.withBehind(Optional.of(source(Ratings.kva(source.system(), source.lineToNeutralVolts(), amps))));
    }

    static Electrical electrical(Supply supply) {
        return Electrical.builder()
                .practice(Practice.NEC)
                .source(source(Ratings.kva(supply.system(), supply.lineToNeutralVolts(), supply.ratedAmps())))
                .build();
    }

    private static SupplySource source(double kva) {
        return SupplySource.builder()
                .kind(SourceKind.TRANSFORMER)
                .ratedKva(kva)
                .impedancePercent(5)
                .xOverR(4)
                .build();
    }

    static Circuit branch(double breakerAmps, double metres) {
        String size = breakerAmps > THIN_BREAKER_AMPS ? "10 AWG" : "12 AWG";
        return Circuit.builder()
                .cable(Cable.builder()
                        .lengthMetres(metres)
                        .size(size)
                        .protectiveSize(size)
                        .build())
                .instantaneousRatio(BRANCH_TRIP)
                .build();
    }

    private static Cable cable(double metres, double amps) {
        Size size =
                SIZES.stream().filter(each -> each.amps() >= amps).findFirst().orElseThrow();
        return Cable.builder()
                .lengthMetres(metres)
                .sets(size.sets())
                .size(size.line())
                .protectiveSize(size.protective())
                .conductorCelsius(75)
                .conduit(Conduit.STEEL)
                .build();
    }
}
