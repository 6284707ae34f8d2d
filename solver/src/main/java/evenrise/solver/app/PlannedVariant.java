package evenrise.solver.app;

import evenrise.model.check.Severity;
import evenrise.model.contract.Phrase;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.file.ChangedProject;
import evenrise.model.file.Format;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.WriteFailed;
import evenrise.model.portfolio.Variant;
import evenrise.model.project.Project;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * One project in one variant, ready to be planned, or why it cannot be.
 *
 * @param project what the project is called
 * @param fileName what ends as its format does
 * @param bytes of the project as it is planned; empty where it is wrong
 * @param price of its bill
 * @param basis what stands with its price
 * @param wrong what is wrong with it, a sentence each
 */
record PlannedVariant(
        String project,
        Variant variant,
        String fileName,
        Optional<byte[]> bytes,
        OptionalDouble price,
        List<String> basis,
        List<String> wrong) {

    /**
     * Each variant of a project's file.
     *
     * @param prices the project as it is to be priced, which is not planned so: no plan depends on prices
     */
    static List<PlannedVariant> of(String project, Path file, List<Variant> variants, UnaryOperator<Project> prices) {
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            return variants.stream()
                    .map(each -> wrong(project, each, List.of("the project cannot be read: " + e.getMessage() + ".")))
                    .toList();
        }
        Reading<Project> read = ProjectFile.read(bytes, file.toString());
        List<PlannedVariant> planned = new ArrayList<>();
        for (Variant variant : variants) {
            if (read.value().isEmpty()) {
                planned.add(wrong(project, variant, errors(read)));
            } else if (variant.changes().isEmpty()) {
                planned.add(ready(
                        project,
                        variant,
                        file.getFileName().toString(),
                        bytes,
                        prices.apply(read.value().get())));
            } else {
                planned.add(changed(project, variant, read.value().get(), prices));
            }
        }
        return planned;
    }

    private static PlannedVariant changed(
            String name, Variant variant, Project project, UnaryOperator<Project> prices) {
        ChangedProject.Changed changed = ChangedProject.of(project, variant.changes());
        if (!changed.misses().isEmpty()) {
            return wrong(name, variant, changed.misses());
        }
        String file = name + "." + variant.name() + ".project.json";
        Reading<Project> read = ProjectFile.read(changed.bytes(), file);
        return read.value()
                .map(each -> ready(name, variant, file, written(each), prices.apply(each)))
                .orElseGet(() -> wrong(name, variant, errors(read)));
    }

    /** As every project is written, a load a line. */
    private static byte[] written(Project project) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ProjectFile.write(project, out, Format.JSON);
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return out.toByteArray();
    }

    /** @param project with the prices that count */
    private static PlannedVariant ready(String name, Variant variant, String file, byte[] bytes, Project project) {
        Optional<BillOfMaterials> bill = project.catalogue().map(any -> BillOfMaterials.of(project));
        return new PlannedVariant(
                name,
                variant,
                file,
                Optional.of(bytes),
                bill.map(each -> OptionalDouble.of(each.total().doubleValue())).orElse(OptionalDouble.empty()),
                bill.map(BillOfMaterials::basisSentences).orElse(List.of()),
                List.of());
    }

    private static PlannedVariant wrong(String project, Variant variant, List<String> wrong) {
        return new PlannedVariant(project, variant, "", Optional.empty(), OptionalDouble.empty(), List.of(), wrong);
    }

    private static List<String> errors(Reading<?> read) {
        return read.problems().stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .map(Problem::message)
                .toList();
    }

    /** What is wrong in one sentence, with the number of all. */
    Optional<String> failure() {
        return wrong.isEmpty()
                ? Optional.empty()
                : Optional.of(wrong.get(0)
                        + (wrong.size() == 1 ? "" : " And " + Phrase.counted(wrong.size() - 1, "more mistake") + "."));
    }
}
