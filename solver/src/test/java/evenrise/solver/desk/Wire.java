package evenrise.solver.desk;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Speaks to a desk as anything may that can send bytes: with whatever headers it likes. */
final class Wire {
    final int port;
    private final String token;
    private String cookie = "";

    Wire(String address) {
        this.port = Integer.parseInt(address.replaceFirst("http://127\\.0\\.0\\.1:([0-9]+)/.*", "$1"));
        this.token = address.replaceFirst(".*token=", "");
    }

    /** What came back: status line and headers, then the body. */
    record Answer(String head, String body) {
        int code() {
            return Integer.parseInt(head.split(" ")[1]);
        }
    }

    /** As a browser does that opens the address. */
    Answer open() {
        Answer answer = send("GET /?token=" + token + " HTTP/1.1", "", "Host: 127.0.0.1:" + port);
        answer.head()
                .lines()
                .filter(line -> line.toLowerCase(Locale.ROOT).startsWith("set-cookie:"))
                .forEach(line -> cookie = line.replaceFirst("(?i)set-cookie: ?([^;]+).*", "$1"));
        return answer;
    }

    Answer get(String path) {
        return send("GET " + path + " HTTP/1.1", "", "Host: 127.0.0.1:" + port, "Cookie: " + cookie);
    }

    Answer post(String path, String body) {
        return post(path, body, "Host: 127.0.0.1:" + port, "Origin: http://127.0.0.1:" + port, "Cookie: " + cookie);
    }

    Answer post(String path, String body, String... headers) {
        List<String> all = new ArrayList<>(List.of(headers));
        all.add("Content-Type: application/json");
        return send("POST " + path + " HTTP/1.1", body, all.toArray(String[]::new));
    }

    String cookie() {
        return cookie;
    }

    Answer send(String request, String body, String... headers) {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        String head = request + "\r\n" + String.join("\r\n", headers)
                + (bytes.length > 0 ? "\r\nContent-Length: " + bytes.length : "") + "\r\nConnection: close\r\n\r\n";
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), port)) {
            socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().write(bytes);
            socket.getOutputStream().flush();
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            socket.getInputStream().transferTo(all);
            String text = all.toString(StandardCharsets.UTF_8);
            int end = text.indexOf("\r\n\r\n");
            return new Answer(text.substring(0, end), text.substring(end + 4));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
