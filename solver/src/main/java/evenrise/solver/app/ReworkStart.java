package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Rotation;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.BuiltSchedule;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.SpareBreaker;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** What a rework starts from: the project as it is to be judged, the plan as built, and what is to be said of both. */
final class ReworkStart {
    private final ReworkRequest asked;
    private final Consumer<String> say;
    private final Optional<BuiltSchedule> schedule;
    private final Plan built;
    private String builtSha256;
    private final BuiltPlant plant;
    private final List<String> notes = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();
    private final Map<String, byte[]> files = new LinkedHashMap<>();
    private Reading<Project> read;

    /** @param say takes what is left out of account */
    ReworkStart(ReworkRequest asked, Consumer<String> say) {
        this.asked = asked;
        this.say = say;
        this.read = Inputs.project(asked.project(), say);
        this.schedule = BuiltSchedules.of(asked.plan(), read.value().orElseThrow());
        schedule.ifPresent(this::take);
        this.built = schedule.map(BuiltSchedule::plan).orElseGet(this::plan);
        asked.measured()
                .map(file -> Readings.of(file, read.value().orElseThrow(), read.sha256(), built, say))
                .ifPresent(this::take);
        Inputs.findings(read).forEach(finding -> say.accept(asked.project().name() + ": " + finding));
        List<SpareBreaker> spares =
                new ArrayList<>(schedule.map(BuiltSchedule::spares).orElse(List.of()));
        asked.spares().table().ifPresent(file -> spares.addAll(BuiltSchedules.spares(file, project(), built)));
        this.plant = BuiltPlant.of(project(), built, was())
                .withSpares(spares, asked.spares().leaves());
        notes.addAll(GearNotes.withHints(plant));
        cautions.addAll(GearNotes.of(plant));
    }

    private void take(BuiltSchedule found) {
        notes.addAll(found.notes());
        if (!found.statesControl()) {
            cautions.add(BuiltSchedule.WITHOUT_CONTROL);
        }
        judge(ReworkFolder.SCHEDULED, found.judged(read.value().orElseThrow()));
        byte[] bytes = ReworkFolder.bytes(out -> PlanFile.write(found.plan(), out, Format.JSON));
        files.put(ReworkFolder.BUILT, bytes);
        builtSha256 = PlanFile.read(bytes, ReworkFolder.BUILT).sha256();
    }

    private void take(Measured readings) {
        Project before = read.value().orElseThrow();
        notes.add(readings.currents().size() + " of " + before.loads().size()
                + " loads have measured currents; the project with them is " + ReworkFolder.MEASURED + ".");
        notes.addAll(readings.notes());
        judge(ReworkFolder.MEASURED, readings.in(before));
    }

    /** The project is another from here on, and written beside the plans. */
    private void judge(String name, Project project) {
        SideNotes kept = read.notes();
        byte[] bytes = ReworkFolder.bytes(out -> ProjectFile.write(project, kept, out, Format.JSON));
        files.put(name, bytes);
        read = Inputs.sound(name, ProjectFile.read(bytes, name));
    }

    private Plan plan() {
        Reading<Plan> asBuilt = Inputs.plan(asked.plan(), read.value().orElseThrow(), say);
        KeptNotes.sayLeftBehind(asked.plan().name(), asBuilt.notes(), say);
        builtSha256 = asBuilt.sha256();
        return asBuilt.value().orElseThrow();
    }

    private Optional<Project> was() {
        return asked.was()
                .map(file -> Inputs.project(file, say).value().orElseThrow())
                .or(() -> schedule.flatMap(it -> it.was(project())));
    }

    /** What is written beside the plans, by name. */
    Map<String, byte[]> files() {
        return files;
    }

    Project project() {
        return Rotation.asBuilt(stated(), built);
    }

    /** Without the rotation that only the plan as built shows. */
    Project stated() {
        return read.value().orElseThrow();
    }

    /** Of the project as it is judged. */
    String sha256() {
        return read.sha256();
    }

    /** Of the plan as built, as it was read or is written. */
    String builtSha256() {
        return builtSha256;
    }

    Plan built() {
        return built;
    }

    BuiltPlant plant() {
        return plant;
    }

    /** What whoever works has to know. */
    List<String> cautions() {
        return cautions;
    }

    List<String> notes() {
        return notes;
    }

    /** Another plan, without what is not judged here. */
    Plan judged(Plan other) {
        return schedule.map(it -> it.judged(other)).orElse(other);
    }
}
