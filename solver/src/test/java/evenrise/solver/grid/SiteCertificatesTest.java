package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLServerSocket;
import javax.net.ssl.SSLSocket;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class SiteCertificatesTest {
    @TempDir
    private static Path folder;

    private static Path site;

    @BeforeAll
    static void twoSites() {
        site = folder.resolve("site");
        new SiteCertificates(site).make(List.of("ws1"));
        new SiteCertificates(site).make(List.of("desk"));
        new SiteCertificates(folder.resolve("other")).make(List.of("ws1"));
    }

    @Test
    void knowsMachinesOfOneAuthorityWheneverTheirKeysWereMade() throws Exception {
        assertThat(talks(SiteKeys.of(site.resolve("ws1")), SiteKeys.of(site.resolve("desk"))))
                .isTrue();
    }

    @Test
    void knowsNoMachineOfAnother() throws Exception {
        assertThat(talks(SiteKeys.of(site.resolve("ws1")), SiteKeys.of(folder.resolve("other/ws1"))))
                .isFalse();
    }

    @Test
    void givesAMachineNothingOfTheAuthoritysSecrets() throws IOException {
        try (var files = Files.list(site.resolve("ws1"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("machine.key", "machine.crt", "authority.crt");
        }
        if (Files.getFileStore(site).supportsFileAttributeView("posix")) {
            for (String each : List.of("ws1", "authority")) {
                assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(site.resolve(each))))
                        .isEqualTo("rwx------");
            }
        }
    }

    @Test
    void overwritesNoKeys() {
        assertThatThrownBy(() -> new SiteCertificates(site).make(List.of("ws2", "ws1")))
                .isInstanceOf(GridUnavailable.class)
                .hasMessageContaining("not overwritten");
        assertThat(site.resolve("ws2")).doesNotExist();
    }

    @Test
    void wantsNamesThatAreSafeAsFolders() {
        for (String name : List.of("", "..", "a/b", "authority", "-x", "a,b")) {
            assertThatThrownBy(() -> new SiteCertificates(site).make(List.of(name)))
                    .hasMessageContaining("no name of a machine");
        }
    }

    @Test
    void saysWhatIsWrongWithAFolderOfKeys() throws IOException {
        Path broken = Files.createDirectories(folder.resolve("broken"));
        assertThatThrownBy(() -> SiteKeys.of(broken)).hasMessageContaining("machine.crt");
        Files.writeString(broken.resolve("machine.crt"), "no certificate");
        assertThatThrownBy(() -> SiteKeys.of(broken)).hasMessageContaining("no PEM file");
    }

    /** Whether a byte gets from one to the other, both having shown their certificates. */
    private static boolean talks(SiteKeys one, SiteKeys other) throws Exception {
        try (SSLServerSocket server = (SSLServerSocket)
                one.context().getServerSocketFactory().createServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            server.setNeedClientAuth(true);
            CompletableFuture<Boolean> heard = CompletableFuture.supplyAsync(() -> {
                try (SSLSocket socket = (SSLSocket) server.accept();
                        InputStream in = socket.getInputStream()) {
                    return in.read() == 7;
                } catch (IOException e) {
                    return false;
                }
            });
            try (SSLSocket socket = (SSLSocket) other.context()
                    .getSocketFactory()
                    .createSocket(InetAddress.getLoopbackAddress(), server.getLocalPort())) {
                socket.getOutputStream().write(7);
                socket.getOutputStream().flush();
            } catch (SSLException e) {
                assertThat(heard.get()).isFalse();
                return false;
            }
            return heard.get();
        }
    }
}
