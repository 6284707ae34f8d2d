package evenrise.model.check;

import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Feeder;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Cables are of a size that there are tables for, and of a temperature that belongs to the size. */
final class Cables {
    private Cables() {}

    static void check(Plant plant, Consumer<Finding> found) {
        Project project = plant.project;
        for (int i = 0; i < project.loads().size(); i++) {
            Optional<Cable> cable = project.loads().get(i).circuit().flatMap(Circuit::cable);
            check("/loads/" + i + "/circuit/cable", cable, found);
        }
        for (int i = 0; i < project.panels().size(); i++) {
            Optional<Cable> cable = project.panels().get(i).feeder().flatMap(Feeder::cable);
            check("/panels/" + i + "/feeder/cable", cable, found);
        }
    }

    private static void check(String pointer, Optional<Cable> stated, Consumer<Finding> found) {
        if (stated.isEmpty()) {
            return;
        }
        Cable cable = stated.get();
        Optional<ConductorSize> size = ConductorSize.of(cable.size());
        if (size.isEmpty()) {
            List<String> names = Stream.concat(ConductorSize.AMERICAN.stream(), ConductorSize.METRIC.stream())
                    .map(ConductorSize::name)
                    .toList();
            String cure = Nearest.cure(cable.size(), names, "Maybe the unit is missing: AWG, kcmil or mm2.");
            found.accept(Finding.error(
                    pointer + "/size",
                    Shown.quoted(cable.size()),
                    "one of: " + names.stream().collect(Collectors.joining(", ")),
                    cure));
        } else if (cable.conductorCelsius().isPresent()) {
            List<Double> columns = size.get().isMetric() ? List.of(70.0, 90.0) : List.of(60.0, 75.0, 90.0);
            double celsius = cable.conductorCelsius().getAsDouble();
            if (!columns.contains(celsius)) {
                String expected = size.get().isMetric() ? "70 or 90" : "60, 75 or 90";
                found.accept(Finding.error(
                        pointer + "/conductor_c",
                        Double.toString(celsius),
                        expected + " for a conductor of " + size.get().name(),
                        ""));
            }
        }
        size.filter(known -> !known.isMetric())
                .flatMap(american -> cable.insulationCelsius().stream().boxed().findFirst())
                .filter(celsius -> !List.of(60.0, 75.0, 90.0).contains(celsius))
                .ifPresent(celsius -> found.accept(
                        Finding.error(pointer + "/insulation_c", Double.toString(celsius), "60, 75 or 90", "")));
    }
}
