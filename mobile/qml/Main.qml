import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Oaklight

ApplicationWindow {
    id: window

    required property AppModel app

    width: 1280
    height: 800
    minimumWidth: 320
    minimumHeight: 480
    title: "Oaklight"
    visible: true
    color: Theme.ground

    Loader {
        anchors.fill: parent
        active: window.app.workspace !== null
        sourceComponent: Desk {
            app: window.app
            workspace: window.app.workspace
        }
    }

    NoTract {
        anchors.fill: parent
        visible: window.app.workspace === null
        app: window.app
    }

    Intro {
        anchors.fill: parent
        visible: !window.app.settings.introSeen
        settings: window.app.settings
    }
}
