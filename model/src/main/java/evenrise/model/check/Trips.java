package evenrise.model.check;

import evenrise.model.project.Circuit;
import evenrise.model.project.Device;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** Ranges of instantaneous trips do not end before they begin, a feeder's device has one rating, and a tap has none. */
final class Trips {
    private Trips() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Project project = parts.project;
        device("/supply/main", project.supply().main(), found);
        for (int i = 0; i < project.panels().size(); i++) {
            Panel panel = project.panels().get(i);
            device("/panels/" + i + "/main", panel.main(), found);
            device("/panels/" + i + "/feeder/device", panel.feeder().flatMap(Feeder::device), found);
            rating("/panels/" + i + "/feeder/device/rated_a", panel.feeder(), found);
            tap("/panels/" + i + "/feeder", panel.feeder(), found);
        }
        for (int i = 0; i < project.nodes().size(); i++) {
            tap("/nodes/" + i + "/feeder", project.nodes().get(i).feeder(), found);
        }
        for (int i = 0; i < project.loads().size(); i++) {
            range(
                    "/loads/" + i + "/circuit/instantaneous",
                    project.loads().get(i).circuit().flatMap(Circuit::instantaneous),
                    found);
        }
    }

    private static void device(String pointer, Optional<Device> device, Consumer<Objection> found) {
        range(pointer + "/instantaneous", device.flatMap(Device::instantaneous), found);
    }

    private static void range(String pointer, Optional<InstantaneousRange> stated, Consumer<Objection> found) {
        stated.filter(range -> range.high() < range.low())
                .ifPresent(range -> found.accept(Objection.error(
                        pointer + "/high",
                        Double.toString(range.high()),
                        "at least low, which is " + range.low(),
                        "Maybe low and high are exchanged.")));
    }

    private static void rating(String pointer, Optional<Feeder> feeder, Consumer<Objection> found) {
        OptionalDouble breaker = feeder.map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
        OptionalDouble device =
                feeder.flatMap(Feeder::device).map(Device::ratedAmps).orElse(OptionalDouble.empty());
        if (breaker.isPresent() && device.isPresent() && breaker.getAsDouble() != device.getAsDouble()) {
            found.accept(Objection.error(
                    pointer,
                    Double.toString(device.getAsDouble()),
                    "the feeder's breaker_a, " + breaker.getAsDouble() + ", which is of the same device",
                    "Maybe leave one of them out."));
        }
    }

    /** Where a tap begins there is no device, and so nothing to say of one. */
    private static void tap(String pointer, Optional<Feeder> stated, Consumer<Objection> found) {
        if (stated.flatMap(Feeder::tap).isEmpty()) {
            return;
        }
        Feeder feeder = stated.orElseThrow();
        String contradicting = feeder.breakerAmps().isPresent()
                ? "breaker_a"
                : feeder.device().isPresent()
                        ? "device"
                        : feeder.residualCurrentAmps().isPresent() ? "residual_current_a" : "";
        if (!contradicting.isEmpty()) {
            found.accept(Objection.error(
                    pointer + "/tap",
                    "a tap",
                    "no " + contradicting + " beside it: no device stands where a tap begins",
                    "Maybe state the device that it ends in as main, or leave tap out."));
        }
    }
}
