package evenrise.solver.app;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.file.WholeFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.document.BillTable;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.report.BillRow;
import evenrise.solver.table.Csv;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A bill of materials. */
final class BillJob {
    private BillJob() {}

    static BillResult run(BillRequest request, Watch watch) {
        List<Source> inputs = new ArrayList<>(List.of(request.project()));
        request.plan().ifPresent(inputs::add);
        request.catalogue().map(Source::file).ifPresent(inputs::add);
        request.csv().ifPresent(path -> Outputs.refuseInputs(path, inputs));
        Project project = SharedPrices.on(
                Inputs.project(request.project(), watch.notes()).value().orElseThrow(),
                request.catalogue(),
                watch.notes());
        Optional<Plan> plan = request.plan()
                .flatMap(it -> Inputs.plan(it, project, watch.notes()).value());
        watch.at(Stage.WRITING);
        BillOfMaterials bill = BillOfMaterials.of(project, plan);
        DocumentTable<BillRow> table = BillTable.of(bill);
        request.csv()
                .ifPresent(path -> Outputs.write(() -> WholeFile.write(path, Csv.of(table.values(), table.remarks()))));
        return new BillResult(project.name(), bill);
    }
}
