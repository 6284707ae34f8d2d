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
    /** As many as {@code sets} of a cable may be. */
    private static final int MOST_SETS = 20;

    private Cables() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Project project = parts.project;
        for (int i = 0; i < project.loads().size(); i++) {
            Optional<Cable> cable = project.loads().get(i).circuit().flatMap(Circuit::cable);
            check("/loads/" + i + "/circuit/cable", cable, found);
        }
        for (int i = 0; i < project.panels().size(); i++) {
            Optional<Cable> cable = project.panels().get(i).feeder().flatMap(Feeder::cable);
            check("/panels/" + i + "/feeder/cable", cable, found);
        }
    }

    private static void check(String pointer, Optional<Cable> stated, Consumer<Objection> found) {
        if (stated.isEmpty()) {
            return;
        }
        Cable cable = stated.get();
        cable.protectiveSize()
                .filter(each -> ConductorSize.of(each).isEmpty())
                .ifPresent(each -> found.accept(unknown(pointer + "/protective_size", each, cable.sets())));
        Optional<ConductorSize> size = ConductorSize.of(cable.size());
        if (size.isEmpty()) {
            found.accept(unknown(pointer + "/size", cable.size(), cable.sets()));
        } else if (cable.conductorCelsius().isPresent()) {
            List<Double> columns = size.get().isMetric() ? List.of(70.0, 90.0) : List.of(60.0, 75.0, 90.0);
            double celsius = cable.conductorCelsius().getAsDouble();
            if (!columns.contains(celsius)) {
                String expected = size.get().isMetric() ? "70 or 90" : "60, 75 or 90";
                found.accept(Objection.error(
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
                        Objection.error(pointer + "/insulation_c", Double.toString(celsius), "60, 75 or 90", "")));
    }

    private static Objection unknown(String pointer, String size, int sets) {
        return Objection.error(
                pointer, Shown.quoted(size), "one of: " + names().collect(Collectors.joining(", ")), cure(size, sets));
    }

    /** A size that does not exist is never answered with a smaller one. */
    static String cure(String size, int sets) {
        Optional<ConductorSize> meant = ConductorSize.meant(size);
        if (meant.isEmpty()) {
            return nearest(size);
        }
        Optional<ConductorSize> larger = meant.get().orLarger();
        if (larger.isPresent()) {
            return "Maybe " + Shown.quoted(larger.get().name()) + ", the next larger.";
        }
        for (int more = sets + 1; more <= MOST_SETS; more++) {
            double each = meant.get().squareMillimetres() * sets / more;
            Optional<ConductorSize> parallel =
                    new ConductorSize(meant.get().name(), each, meant.get().isMetric()).orLarger();
            if (parallel.isPresent()) {
                return "Maybe " + more + " sets of "
                        + Shown.quoted(parallel.get().name()) + ", which have as much metal.";
            }
        }
        return "Maybe several cables, each with a breaker of its own.";
    }

    /** A misspelt unit: only sizes of the very number that stands before it. */
    private static String nearest(String size) {
        String number = size.strip().split("[^0-9/.]", 2)[0];
        List<String> names =
                names().filter(name -> name.startsWith(number + " ")).toList();
        return Nearest.cure(size, names, "Maybe the unit is missing: AWG, kcmil or mm2.");
    }

    private static Stream<String> names() {
        return Stream.concat(ConductorSize.AMERICAN.stream(), ConductorSize.METRIC.stream())
                .map(ConductorSize::name);
    }
}
