package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.FileSet;
import evenrise.model.file.Format;
import evenrise.model.file.Json;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Cautions;
import evenrise.solver.document.Imprint;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.WorkPrint;
import evenrise.solver.report.FrontFile;
import evenrise.solver.report.PlanNames;
import evenrise.solver.report.WorkFile;
import evenrise.solver.report.WorkSheetText;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.table.Csv;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Where a rework goes: a folder with the front, a plan a point, and the work. */
final class ReworkFolder {
    static final String MEASURED = "project-as-measured.json";
    static final String SCHEDULED = "project-as-scheduled.json";
    static final String BUILT = "plan-as-built.json";
    private static final String A4 = "work-a4.pdf";
    private static final String LETTER = "work-letter.pdf";
    private static final String FRONT = "front.json";
    private static final Pattern USED = Pattern.compile(
            "plan-[0-9]{4,}[a-z]?\\.json|front\\.(json|csv)|work(\\.json|\\.txt|-a4\\.pdf|-letter\\.pdf)|"
                    + "rework\\.checkpoint(-before)?\\.json|"
                    + String.join("|", Pattern.quote(MEASURED), Pattern.quote(SCHEDULED), Pattern.quote(BUILT)) + "|"
                    + Pattern.quote(FileSet.MANIFEST));

    private final FileSet files;

    private ReworkFolder(Path folder) {
        this.files = new FileSet(folder);
    }

    /**
     * @param inputs what the rework is made from, which it never overwrites or removes
     * @throws JobFailed where nothing could be written there, so that nobody waits for what gets lost
     */
    static ReworkFolder of(Path folder, List<Source> inputs) {
        String shown = Phrase.quoted(Harmless.shown(folder.toString()));
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new JobFailed(JobFailed.Reason.OUTPUT, "output " + shown + " is a file. Name a folder.");
            }
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT, "output folder " + shown + " cannot be made: " + e.getMessage() + ".");
        }
        if (!Files.isWritable(folder)) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, "output folder " + shown + " may not be written to.");
        }
        refuseInputs(folder, inputs);
        return new ReworkFolder(folder);
    }

    /** A folder that holds an input under a name that a rework uses would lose it. */
    private static void refuseInputs(Path folder, List<Source> inputs) {
        for (Source input : inputs) {
            Optional<Path> name = input.path().map(Path::getFileName);
            if (name.filter(each -> USED.matcher(each.toString()).matches()).isPresent()) {
                Outputs.refuseInputs(folder.resolve(name.get()), List.of(input));
            }
        }
    }

    /** Takes what is to be written with the rest. */
    void add(String name, byte[] bytes) {
        files.add(name, bytes);
    }

    void write(Front front, FrontPoint chosen, WorkSheets sheets, Imprint imprint) {
        FrontFile sheet = FrontFile.of(sheets.project().name(), front, chosen);
        PlanNames names = PlanNames.of(front, chosen);
        for (FrontPoint each : PlanNames.shown(front, chosen)) {
            files.add(names.of(each), bytes(out -> PlanFile.write(each.plan(), out, Format.JSON)));
        }
        files.add("front.csv", utf8(Csv.of(sheet.values())));
        files.add(FRONT, utf8(Json.of(sheet) + "\n"));
        files.add("work.json", utf8(Json.of(WorkFile.of(Cautions.ALL, sheets.order())) + "\n"));
        files.add("work.txt", utf8(WorkSheetText.pages(sheets)));
        new WorkPrint(imprint, sheets)
                .on(List.of(PrintedSheets.Paper.A4, PrintedSheets.Paper.LETTER))
                .forEach((paper, bytes) -> files.add(paper == PrintedSheets.Paper.A4 ? A4 : LETTER, bytes));
        Outputs.write(files::write);
    }

    interface Writing {
        void to(OutputStream out) throws WriteFailed;
    }

    static byte[] bytes(Writing what) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            what.to(out);
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return out.toByteArray();
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
