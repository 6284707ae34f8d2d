package evenrise.model.sizing;

import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Transformer;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Sizes as they are tried, by part and place; whatever is not named stays as the project states it. */
final class Draft {
    private final Map<Part, Map<String, Size>> sizes = new EnumMap<>(Part.class);

    void put(Part part, Map<String, Size> chosen) {
        sizes.computeIfAbsent(part, any -> new HashMap<>()).putAll(chosen);
    }

    /** Goes back to what the project states. */
    void remove(Part part, String place) {
        sizes.getOrDefault(part, new HashMap<>()).remove(place);
    }

    private Optional<Size> size(Part part, String place) {
        return Optional.ofNullable(sizes.getOrDefault(part, Map.of()).get(place));
    }

    Project into(Project project) {
        return project.withLoads(project.loads().stream().map(this::load).toList())
                .withPanels(project.panels().stream().map(this::panel).toList())
                .withNodes(project.nodes().stream().map(this::node).toList());
    }

    private Load load(Load load) {
        Load rated = size(Part.BREAKER, load.id())
                .map(size -> load.withBreakerAmps(size.amount()))
                .orElse(load);
        return size(Part.BRANCH_CABLE, load.id())
                .map(size -> rated.withCircuit(rated.circuit().map(it -> laid(it, size))))
                .orElse(rated);
    }

    private static Circuit laid(Circuit circuit, Size size) {
        return circuit.withCable(circuit.cable().map(size::laidAs));
    }

    private Panel panel(Panel panel) {
        return panel.withFeeder(feeder(panel.id(), panel.feeder()))
                .withInterruptingAmps(interrupting(panel.id(), panel.interruptingAmps()));
    }

    private DistributionNode node(DistributionNode node) {
        return node.withFeeder(feeder(node.id(), node.feeder()))
                .withInterruptingAmps(interrupting(node.id(), node.interruptingAmps()))
                .withTransformer(node.transformer().map(it -> transformer(node.id(), it)));
    }

    private Transformer transformer(String place, Transformer transformer) {
        return size(Part.TRANSFORMER, place)
                .map(size -> transformer.withRatedKva(OptionalDouble.of(size.amount())))
                .orElse(transformer);
    }

    private OptionalDouble interrupting(String place, OptionalDouble stated) {
        return size(Part.INTERRUPTING, place)
                .map(size -> OptionalDouble.of(size.amount()))
                .orElse(stated);
    }

    private Optional<Feeder> feeder(String place, Optional<Feeder> stated) {
        return stated.map(feeder -> {
            Optional<Cable> cable = feeder.cable()
                    .map(it -> size(Part.FEEDER_CABLE, place)
                            .map(size -> size.laidAs(it))
                            .orElse(it));
            OptionalDouble device = size(Part.DEVICE, place)
                    .map(size -> OptionalDouble.of(size.amount()))
                    .orElse(feeder.breakerAmps());
            return feeder.withCable(cable).withBreakerAmps(device);
        });
    }
}
