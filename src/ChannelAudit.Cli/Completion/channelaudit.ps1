# Completion of channelaudit in PowerShell: the program itself is asked what can stand at the cursor; where it knows nothing, files are offered.
Register-ArgumentCompleter -Native -CommandName channelaudit -ScriptBlock {
    param($word, $line, $cursor)
    $length = $cursor - $line.Extent.StartOffset
    $text = "$line".PadRight($length).Substring(0, $length) -replace '^\S+', ''
    channelaudit "[suggest:$($text.Length)]" $text 2>$null | ForEach-Object {
        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
    }
}
